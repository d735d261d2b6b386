import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { flySample, sampleFiles, samples } from './samples.ts';

/** Computes every sample flight and writes the logs, their cards and the index into `sample-logs/`. */
const folder = 'sample-logs';
const degree = Math.PI / 180;

for (const sample of samples) {
  const computed = flySample(sample);
  for (const { name, text } of sampleFiles(sample, computed)) writeFileSync(join(folder, name), text);
  const events = computed.result.events.map((e) => `${e.name} ${e.time_s.toFixed(2)}`).join(', ');
  const off = computed.result.events.filter((e) => e.name === 'cutoff').at(-1)!;
  const s = computed.ascent.observe(off.time_s, off.state);
  const state = `${(s.altitude_m / 1000).toFixed(2)} km, inertial ${s.inertialSpeed_m_s.toFixed(1)} m/s, path ${(s.flightPathAngle_rad / degree).toFixed(2)}°`;
  console.log(`${sample.id}: ${events}`);
  console.log(`  last cutoff: ${state}, ${s.stagePropellant_kg.toFixed(0)} kg of propellant left`);
}

const index = samples.map(({ id, title, log, note, set }) => ({
  id,
  title,
  log,
  card: `${id}.mission.json`,
  note,
  ...(set === undefined ? {} : { set }),
}));
writeFileSync(join(folder, 'index.json'), `${JSON.stringify(index, null, 2)}\n`);

import { expect, test } from 'vitest';
import { repairChannels } from '../../src/log/repairs.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const mass = Float64Array.from(ascent, (x) => x.mass_kg - (x.time_s > 155 ? 3000 : 0));
const rows = Int32Array.from(time.keys());
const edited = (values: Float64Array, edits: Readonly<Record<number, number>>): Float64Array => {
  const out = Float64Array.from(values);
  for (const [i, x] of Object.entries(edits)) out[Number(i)] = x;
  return out;
};

test('a clean flight gets no note', () => {
  expect(repairChannels(time, { altitude, speed, mass }, rows, {}).notes).toEqual([]);
});
test('what is taken out is missing, the rest untouched', () => {
  const { channels, notes } = repairChannels(
    time,
    { altitude: edited(altitude, { 50: 0 }) },
    rows.map((i) => i + 100),
    {},
  );
  expect(channels.altitude?.[50]).toBeNaN();
  expect(channels.altitude?.[51]).toBe(altitude[51]);
  expect(notes).toMatchObject([{ code: 'outliers', channel: 'altitude', rows: [151, 151], count: 1 }]);
});

test('gaps are noted, not filled', () => {
  const kept = (values: Float64Array): Float64Array => values.filter((_, i) => i < 100 || i > 140);
  const { notes } = repairChannels(kept(time), { altitude: kept(altitude) }, rows, {});
  expect(notes).toMatchObject([{ code: 'gap', rows: [100, 101], count: 1 }]);
  expect(notes[0]?.text).toContain('42 s');
});

test('an angle that turns over is made to go on', () => {
  const longitude = time.map((t) => ((((170 + 0.1 * t + 180) % 360) - 180) * Math.PI) / 180);
  const { channels, notes } = repairChannels(time, { longitude }, rows, {});
  expect(notes.map((n) => n.code)).toEqual(['angle-turned-over']);
  expect(channels.longitude?.at(-1)).toBeCloseTo(((170 + 29.9) * Math.PI) / 180, 9);
});

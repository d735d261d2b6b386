import { readFileSync, writeFileSync } from 'node:fs';
import { readMission } from '../../../src/mission/readCard.ts';
import { Ascent } from '../../../src/refly/ascent.ts';
import { ascentProgram } from '../../../src/refly/ascentShape.ts';
import { bestAscent } from '../../../src/refly/bestAscent.ts';
import { rocketOf } from '../../../src/refly/rocketOf.ts';
import { simulatedLog } from '../../../src/refly/simulatedLog.ts';
import { frameOf } from '../../../src/refly/trialFlights.ts';

/**
 * Computes the clean flights beside this file anew: best ascents of invented rockets, gravity turns in dense air,
 * written down in a hand pilot's six channels. Synthetic, every one. From the project's folder:
 * `npx vite build --ssr tests/review/flights/make.ts --outDir node_modules/.clean-flights` and
 * `node node_modules/.clean-flights/make.js`.
 */
const folder = 'tests/review/flights';

interface Card {
  mission?: string;
  target?: object;
  limits?: object;
  flight?: object;
  vehicle: { payload_kg: number; stages: Record<string, unknown>[]; jettisons?: object[] };
}

const card = (file: string): Card => JSON.parse(readFileSync(`${file}.mission.json`, 'utf8'));
const drag = [
  [0, 0.35],
  [0.8, 0.38],
  [1.1, 0.6],
  [2, 0.45],
  [5, 0.3],
];

/** An invented small two-stage rocket for Mars. */
const mars = {
  world: 'mars',
  site: { latitude_deg: 18, longitude_deg: 77, altitude_m: 0, launchAzimuth_deg: 90 },
  target: { kind: 'orbit', apoapsisAltitude_m: 250000, periapsisAltitude_m: 250000 },
  vehicle: {
    name: 'Thimble, two stages',
    payload_kg: 700,
    stages: [
      ['lower', 260, 2100, 24000, 315, 0.12],
      ['upper', 90, 620, 5200, 338, 0.05],
    ].map(([name, dryMass_kg, propellantMass_kg, thrustVacuum_N, ispVacuum_s, exitArea_m2]) => ({
      name,
      dryMass_kg,
      propellantMass_kg,
      thrustVacuum_N,
      ispVacuum_s,
      exitArea_m2,
      referenceArea_m2: 1.2,
      dragCoefficient: drag,
    })),
  },
} as Card;

const bobstay = (payload_kg: number, ignitions: number): Card => {
  const made = card('tests/flights/osselby-nominal');
  made.vehicle.payload_kg = payload_kg;
  made.vehicle.stages.at(-1)!.ignitions = ignitions;
  return made;
};

const flights: Readonly<Record<string, Card>> = {
  'clean-light': bobstay(3000, 1),
  'clean-heavy': bobstay(6000, 1),
  'clean-relit': bobstay(4500, 2),
  'clean-earth': card('tests/flights/earth-nominal'),
  'clean-boosters': card('sample-logs/fairlead-tansy-1'),
  'clean-single': card('sample-logs/thimble-teasel-1'),
  'clean-mars': mars,
};

/** Rows under thrust and near its edges every 0.2 s, in coasts every 5 s. */
function kept(throttle: Float64Array, i: number): boolean {
  for (let k = Math.max(0, i - 20); k <= Math.min(throttle.length - 1, i + 20); k++)
    if (throttle[k]! > 0) return i % 2 === 0;
  return i % 50 === 0;
}

for (const [name, made] of Object.entries(flights)) {
  const text = `${JSON.stringify(
    {
      ...made,
      mission: name,
      limits: { ...made.limits, angleOfAttackInAir_deg: 0 },
      flight: { notes: 'Synthetic: computed by tests/review/flights/make.ts, not flown.' },
    },
    null,
    1,
  )}\n`;
  const mission = readMission({ card: { name: `${name}.mission.json`, text } });
  const found = bestAscent(mission);
  if (found.kind !== 'found') throw new Error(`${name}: ${found.kind === 'unavailable' && found.reason}`);
  const { rocket } = rocketOf(mission.vehicle!);
  const program = ascentProgram(frameOf(mission, rocket!), found.shape);
  const coast = { do: 'coast', until: { kind: 'duration', duration_s: 8 } } as const;
  const { log } = simulatedLog(
    new Ascent(mission.world, rocket!, { carryLosses: false, relativeTolerance: 1e-10 }),
    { ...program, steps: [...program.steps, coast] },
    name,
  );
  const { altitude, speed, mass, throttle, pitch } = log.channels;
  const rows = ['time_s,altitude_m,speed_m_s,mass_kg,throttle,pitch_deg'];
  for (let i = 0; i < log.time.length; i++)
    if (kept(throttle!, i))
      rows.push(
        [
          log.time[i]!.toFixed(1),
          altitude![i]!.toFixed(2),
          speed![i]!.toFixed(3),
          mass![i]!.toFixed(2),
          throttle![i]!.toFixed(4),
          ((pitch![i]! * 180) / Math.PI).toFixed(3),
        ].join(','),
      );
  writeFileSync(`${folder}/${name}.csv`, `${rows.join('\n')}\n`);
  writeFileSync(`${folder}/${name}.mission.json`, text);
  console.log(
    `${name}: ${found.margin_m_s.toFixed(1)} m/s left, relit ${found.relit}, ${rows.length - 1} rows`,
  );
}

import { expect, test } from 'vitest';
import { buildFlight } from '../../../src/flight/buildFlight.ts';
import { massFromCard } from '../../../src/flight/identify/massFromCard.ts';
import { ascentSpan } from '../../../src/ledger/ascentEnd.ts';
import { readLog } from '../../../src/log/readLog.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { frameLedger } from '../../../src/review/ledgerFigures.ts';
import { cutLog, readCardText, readTruth, referenceNames } from '../../referenceFlights.ts';

const columns = ['time_s', 'altitude_m', 'speed_m_s', 'pitch_deg'];
const cases = referenceNames.flatMap((name) =>
  ['throttle', 'thrust_N'].map((control) => [name, control] as const),
);

test.each(cases)('%s without its mass column: card and %s give the mass', async (name, control) => {
  const mission = readMission({ card: { name, text: readCardText(name) } });
  const log = await readLog(new TextEncoder().encode(cutLog(name, [...columns, control])), { name });
  const flight = buildFlight(log, mission);
  const { entries } = frameLedger(flight, ascentSpan(flight), 'ground');
  const truth = readTruth(name).ground;
  // Cutoff lies somewhere in a gap of 0.1 s, i.e. up to 2.8 m/s at the end of earth-lofted. Measured: within 1.5.
  expect(Math.abs(entries.ideal.value! - truth.ideal!)).toBeLessThan(3);
  expect(Math.abs(entries.gravity.value! - truth.gravity!)).toBeLessThan(0.5);
  expect(Math.abs(entries.drag.value! - truth.drag!)).toBeLessThan(0.5);
  expect(flight.drops.length).toBe(1);
  expect(entries.ideal.low!).toBeLessThan(truth.ideal!);
  expect(entries.ideal.high!).toBeGreaterThan(truth.ideal!);
});

test('a card without thrust gives no mass', () => {
  const mission = readMission({
    card: {
      name: 'card',
      text: JSON.stringify({
        vehicle: {
          payload_kg: 1,
          stages: [{ dryMass_kg: 1, propellantMass_kg: 5, ispVacuum_s: 300 }],
        },
      }),
    },
  });
  const some = Float64Array.of(0, 1, 2);
  expect(massFromCard(some, some, { throttle: some, thrust: null }, mission)).toBeNull();
});

import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { ispShareFrom, massSigma, obtainableSigma } from '../../src/review/obtainableError.ts';
import { doubtfulCard, instruments, noisyLog } from '../noisyFlights.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

const name = 'osselby-short';

test('a card that stands and a mass without noise leave nothing open', async () => {
  const log = await readLog(new TextEncoder().encode(cutLog(name, undefined, 5)), { name });
  const flight = buildFlight(log, readMission({ card: { name, text: readCardText(name) } }));
  expect(ispShareFrom(flight, 0)).toBe(0);
  expect(obtainableSigma(flight, 0, 5000)).toBeCloseTo(massSigma(flight, 0), 12);
});

test('an adopted engine leaves a share of what is yet to be burnt, a rounded mass more the lighter it is', async () => {
  const log = await readLog(new TextEncoder().encode(noisyLog(name, instruments, 3)), { name });
  const flight = buildFlight(log, readMission({ card: { name, text: doubtfulCard(name, 3) } }));
  const share = ispShareFrom(flight, 0);
  expect(share).toBeGreaterThan(0);
  expect(obtainableSigma(flight, 0, 5000)).toBeCloseTo(Math.hypot(5000 * share, massSigma(flight, 0)), 9);
  expect(massSigma(flight, flight.time.length - 1)).toBeGreaterThan(massSigma(flight, 0));
});

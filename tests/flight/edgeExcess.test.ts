import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { edgeExcess } from '../../src/flight/edgeExcess.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { instruments, noisyLog } from '../noisyFlights.ts';
import { readCardText } from '../referenceFlights.ts';

test('large beside a burn’s edge, fading over a few samples', async () => {
  const name = 'osselby-short';
  const log = await readLog(new TextEncoder().encode(noisyLog(name, instruments, 1)), { name });
  const flight = buildFlight(log, readMission({ card: { name, text: readCardText(name) } }));
  const excess = edgeExcess(flight);
  const cutoff = flight.burns[0]?.endIndex ?? 0;
  expect(excess(cutoff)).toBeGreaterThan(2);
  expect(excess(cutoff)).toBeGreaterThan(excess(cutoff - 3));
  expect(excess(cutoff - 100)).toBeCloseTo(1.2, 3);
});

import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { ascentSpan } from '../../src/ledger/ascentEnd.ts';
import { budgetAlong } from '../../src/ledger/budget.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { toGoSigma, toGoSigmas } from '../../src/review/toGoError.ts';
import { instruments, noisyLog } from '../noisyFlights.ts';
import { readCardText } from '../referenceFlights.ts';

test('on a steep path the altitude’s rate tells on the horizontal speed too', async () => {
  const name = 'earth-lofted';
  const log = await readLog(new TextEncoder().encode(noisyLog(name, instruments, 1)), { name });
  const flight = buildFlight(log, readMission({ card: { name, text: readCardText(name) } }));
  const budget = budgetAlong(flight, ascentSpan(flight), null);
  const { ways, toGo, index, time_s } = budget;
  if (ways === null || toGo === null) throw new Error('the reference flight has a target');
  const sigmas = toGoSigmas(flight, index, ways);
  const at = (s: number) => time_s.findIndex((t) => t >= s);
  // In the short coast at 162 s the path stands at 84°, and the smoothing sees a second to each side.
  expect(sigmas[at(162)] ?? 0).toBeGreaterThan(10 * (sigmas[at(350)] ?? 0));
  // By slopes and by whole searches: the same where the cost is smooth (a snapshot of both agrees to 15 %).
  const k = at(350);
  const whole = toGoSigma(flight, index[k] ?? 0, toGo[k] ?? 0);
  expect((sigmas[k] ?? 0) / whole).toBeGreaterThan(0.8);
  expect((sigmas[k] ?? 0) / whole).toBeLessThan(1.25);
});

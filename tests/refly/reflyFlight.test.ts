import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import type { Flight } from '../../src/flight/types.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { makingsOf } from '../../src/refly/flightMakings.ts';
import { refly, reflyFlight } from '../../src/refly/reflyFlight.ts';
import { cutLog, type ReferenceName, readCardText, referenceNames } from '../referenceFlights.ts';

async function flightOf(
  name: ReferenceName,
  every = 1,
  columns?: string[],
  card = readCardText(name),
): Promise<Flight> {
  const log = await readLog(new TextEncoder().encode(cutLog(name, columns, every)), { name: `${name}.csv` });
  return buildFlight(log, readMission({ card: { name: `${name}.mission.json`, text: card } }));
}

function known(flight: Flight) {
  const made = makingsOf(flight);
  if (made.kind !== 'known') throw new Error(made.reason);
  return made.makings;
}

describe.each(referenceNames)('%s, re-flown from six channels', (name) => {
  /**
   * Asked for: 0.5 m/s and 50 m. Measured at 10 Hz: at most 0.0015 m/s and 0.27 m; at 1 Hz 0.075 m/s and 7.3 m.
   */
  test.each([
    [1, 0.005, 0.5],
    [10, 0.15, 15],
  ])('every %i rows: ends where the log does', async (every, speed, height) => {
    const again = reflyFlight(await flightOf(name, every));
    if (again.kind !== 'reflown') throw new Error(again.reason);
    expect(again.result.end).toBe('flown');
    expect(Math.abs(again.error.speed_m_s)).toBeLessThan(speed);
    expect(Math.abs(again.error.altitude_m)).toBeLessThan(height);
    expect(Math.abs(again.error.mass_kg!)).toBeLessThan(0.001);
    expect(again.assumed).toEqual([]);
  });
});

describe('the groups of a re-flight', () => {
  test('a lighter rocket ends faster, an earlier cutoff slower', async () => {
    const flight = await flightOf('osselby-nominal');
    const makings = known(flight);
    const end = (m: typeof makings) => {
      const { ascent, result } = refly(flight, m);
      return ascent.observe(result.time_s, result.state).inertialSpeed_m_s;
    };
    const plain = end(makings);
    expect(
      end({ ...makings, start: { ...makings.start, mass_kg: makings.start.mass_kg - 500 } }),
    ).toBeGreaterThan(plain + 50);
    const burns = makings.timing.burns.map((b) => (b.stage === 1 ? { ...b, end_s: b.end_s - 10 } : b));
    expect(end({ ...makings, timing: { ...makings.timing, burns } })).toBeLessThan(plain - 100);
  });
});

describe('what cannot be re-flown', () => {
  test('without a pitch', async () => {
    const flight = await flightOf('osselby-nominal', 5, [
      'time_s',
      'altitude_m',
      'speed_m_s',
      'mass_kg',
      'throttle',
    ]);
    expect(reflyFlight(flight)).toEqual({ kind: 'unavailable', reason: 'the log has no pitch' });
  });

  test('without thrust in the card', async () => {
    const card = JSON.parse(readCardText('osselby-nominal'));
    delete card.vehicle.stages[0].thrustVacuum_N;
    const again = reflyFlight(await flightOf('osselby-nominal', 5, undefined, JSON.stringify(card)));
    expect(again).toEqual({
      kind: 'unavailable',
      reason: 'the card lacks vehicle.stages[0].thrustVacuum_N',
    });
  });

  test('without a vehicle', async () => {
    const card = JSON.parse(readCardText('osselby-nominal'));
    delete card.vehicle;
    const again = reflyFlight(await flightOf('osselby-nominal', 5, undefined, JSON.stringify(card)));
    expect(again).toEqual({ kind: 'unavailable', reason: 'the card has no vehicle' });
  });
});

import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { FlightState } from '../../src/refly/flightState.ts';
import { flownThrottle } from '../../src/refly/flownThrottle.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

async function throttleOf(columns: string[], every = 1) {
  const mission = readMission({ card: { name: 'card', text: readCardText('osselby-throttled') } });
  const text = cutLog('osselby-throttled', columns, every);
  const log = await readLog(new TextEncoder().encode(text), { name: 'log.csv' });
  const program = flownThrottle(buildFlight(log, mission), rocketOf(mission.vehicle!).rocket!.stages);
  const s = new FlightState();
  return (t: number) => {
    s.time_s = t;
    return program.at(s);
  };
}

const six = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle', 'pitch_deg'];

describe('flownThrottle', () => {
  test('is the logged throttle, to the digits that it was rounded to', async () => {
    const at = await throttleOf(six);
    // Rows of the log.
    expect(Math.abs(at(10) - 1)).toBeLessThan(1e-4);
    expect(Math.abs(at(21) - 0.9903)).toBeLessThan(1e-4);
    expect(Math.abs(at(300) - 1)).toBeLessThan(1e-4);
  });

  test('follows the mass where no throttle is logged', async () => {
    const logged = await throttleOf(six);
    const at = await throttleOf(six.filter((c) => c !== 'throttle'));
    // Steps of two seconds for a throttle that closes by up to 0.006 a second. Measured: 0.004.
    for (const t of [10, 25, 50, 300]) expect(Math.abs(at(t) - logged(t))).toBeLessThan(0.01);
  });
});

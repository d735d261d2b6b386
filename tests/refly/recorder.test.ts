import { expect, test } from 'vitest';
import { Ascent } from '../../src/refly/ascent.ts';
import { held } from '../../src/refly/controls.ts';
import { SteadyRecorder } from '../../src/refly/recorder.ts';
import { padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

test('samples at its period from hold-down to the end, and leaves the flight as it is', () => {
  const ascent = new Ascent(worldOf(0), rocketWith([stageOf()]));
  const program = {
    start: padStart(2),
    controls: { throttle: held(1), pitch: held(Math.PI / 2), heading: held(0) },
    steps: [
      { do: 'burn', until: { kind: 'time', time_s: 10.33 } },
      { do: 'coast', until: { kind: 'time', time_s: 12.1 } },
    ],
  } as const;
  const recorder = new SteadyRecorder(['time_s', 'altitude_m', 'mass_kg', 'throttle'], 0.5, -2);
  const seen = ascent.fly(program, recorder);
  const unseen = ascent.fly(program);
  expect(Array.from(seen.state)).toEqual(Array.from(unseen.state));
  const { time_s, altitude_m, mass_kg, throttle } = recorder.columns();
  expect(Array.from(time_s.slice(0, 5))).toEqual([-2, -1.5, -1, -0.5, 0]);
  expect(time_s.length).toBe(30);
  expect(time_s.at(-1)).toBe(12.1);
  expect(Math.abs(altitude_m[4]!)).toBeLessThan(1e-6);
  expect(mass_kg[0]).toBe(10500);
  expect(throttle[24]).toBe(1);
  expect(throttle[25]).toBe(0);
});

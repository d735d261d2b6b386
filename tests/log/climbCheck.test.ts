import { expect, test } from 'vitest';
import { climbCheck } from '../../src/log/climbCheck.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);

test('sound units pass, also with coarse steps', () => {
  expect(climbCheck(time, { altitude, speed }, [])).toBeNull();
  expect(
    climbCheck(time, { altitude: altitude.map((x) => Math.floor(x / 1000) * 1000), speed }, []),
  ).toBeNull();
});

test('a climb faster than the speed is named with its ratio', () => {
  const note = climbCheck(time, { altitude: altitude.map((x) => x / 0.3048), speed }, []);
  expect([note?.code, note?.text.includes('3.3 times')]).toEqual(['units-contradict', true]);
});

test('without altitude or speed there is nothing to check', () => {
  expect(climbCheck(time, { altitude }, [])).toBeNull();
});

import { expect, test } from 'vitest';
import { unitChanges } from '../../src/log/unitChange.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const mass = Float64Array.from(ascent, (x) => x.mass_kg - (x.time_s > 155 ? 3000 : 0));

test.each([
  ['altitude', altitude],
  ['speed', speed],
  ['mass with a stage thrown off', mass],
  ['altitude in steps', altitude.map((x) => Math.round(x / 1000) * 1000)],
  ['speed in steps', speed.map((x) => Math.round(x / 10) * 10)],
])('a clean %s is left alone', (_, values) => {
  expect(unitChanges(time, values)).toEqual([]);
});

test('noise is left alone at any rate', () => {
  let seed = 7;
  const random = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647 - 0.5;
  };
  for (const every of [1, 3, 10]) {
    const pick = (values: Float64Array): Float64Array => values.filter((_, i) => i % every === 0);
    expect(
      unitChanges(
        pick(time),
        pick(altitude).map((x) => x + 40 * random()),
      ),
    ).toEqual([]);
  }
});

test.each([1000, 0.001, 3.6, 1 / 3.6, 0.3048, 1 / 0.3048])('a unit that changes midway, by %d', (scale) => {
  const changed = altitude.map((x, i) => (i < 130 ? x : x / scale));
  const [change, ...more] = unitChanges(time, changed);
  expect([change?.row, more.length]).toEqual([130, 0]);
  expect(change?.scale).toBeCloseTo(scale, 9);
});

import { expect, test } from 'vitest';
import { wildValues } from '../../src/log/outliers.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const mass = Float64Array.from(ascent, (x) => x.mass_kg - (x.time_s > 155 ? 3000 : 0));
const edited = (values: Float64Array, edits: Readonly<Record<number, number>>): Float64Array => {
  const out = Float64Array.from(values);
  for (const [i, x] of Object.entries(edits)) out[Number(i)] = x;
  return out;
};

test.each([
  ['altitude', altitude],
  ['speed', speed],
  ['mass with a stage thrown off', mass],
  ['altitude in steps', altitude.map((x) => Math.round(x / 1000) * 1000)],
  ['speed in steps', speed.map((x) => Math.round(x / 10) * 10)],
])('a clean %s is left alone', (_, values) => {
  expect(wildValues(time, values)).toEqual([]);
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
      wildValues(
        pick(time),
        pick(altitude).map((x) => x + 40 * random()),
      ),
    ).toEqual([]);
  }
});

test('single and few wild values', () => {
  expect(wildValues(time, edited(altitude, { 50: 0, 120: 1e6, 121: 1e6 }))).toEqual([50, 120, 121]);
});

test('a long log hides none, whether the rows around it are steady, missing or rough', () => {
  const n = 20_000;
  const long = Float64Array.from({ length: n }, (_, i) => i / 50);
  const values = long.map((t, i) => 1000 + 3 * t * t + (i % 7000 > 6000 ? Math.sin(i * i) : 0));
  const planted = [500, 501, 6500, 9999, 13_333, 19_990];
  for (const i of planted) values[i] = -4e4;
  for (let i = 13_300; i < 13_330; i += 2) values[i] = Number.NaN;
  values[19_999] = Number.NaN;
  expect(wildValues(long, values)).toEqual(planted);
});

import { expect, test } from 'vitest';
import { columnSample } from '../../src/log/columnSample.ts';

const column = (numbers: readonly number[], texts: readonly (readonly [number, string])[] = []) => ({
  header: 'alt',
  unitsCell: 'm',
  numbers: Float64Array.from(numbers),
  texts: new Map(texts),
});

test('the first values are the first cells that hold something', () => {
  const sample = columnSample(column([Number.NaN, 1.5, Number.NaN, 2, 3, 4], [[2, 'lift-off']]));
  expect(sample.first).toEqual(['1.5', 'lift-off', '2', '3']);
  expect([sample.numbers, sample.texts]).toEqual([4, 1]);
});

test('extremes of a long column survive in its shape', () => {
  const values = Array.from({ length: 10_000 }, (_, i) => (i === 5_432 ? 99 : Math.sin(i)));
  const { shape } = columnSample(column(values));
  expect(shape.length).toBeLessThanOrEqual(120);
  expect(Math.max(...shape.filter((v) => v !== null))).toBe(99);
});

test('a stretch without numbers is a gap, a column without any has no values', () => {
  const { shape, first } = columnSample(column([Number.NaN, Number.NaN]));
  expect(shape).toEqual([null, null, null, null]);
  expect(first).toEqual([]);
});

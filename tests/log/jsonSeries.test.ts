import { expect, test } from 'vitest';
import { namedSeries, pointSeries } from '../../src/log/jsonSeries.ts';

test('series with their names beside them', () => {
  expect(
    namedSeries([
      { name: 't', unit: 's', values: [0, 1] },
      { label: 'h', data: [5, 6] },
    ]),
  ).toEqual([
    { name: 't', unit: 's', cells: [0, 1] },
    { name: 'h', unit: null, cells: [5, 6] },
  ]);
});

test('points of time and value are brought to one clock', () => {
  const points = {
    h: [
      [0, 5],
      [2, 6],
    ],
    v: [
      [0, 7],
      [1, 8],
    ],
  };
  expect(pointSeries(points, { h: 'km' })).toEqual([
    { name: 'time', unit: null, cells: [0, 1, 2] },
    { name: 'h', unit: 'km', cells: [5, null, 6] },
    { name: 'v', unit: null, cells: [7, 8, null] },
  ]);
});

test('other lists and objects are not', () => {
  expect(
    namedSeries([
      { t: 0, h: 1 },
      { t: 1, h: 2 },
    ]),
  ).toBeNull();
  expect(namedSeries([1, 2])).toBeNull();
  expect(pointSeries({ t: [0, 1], h: [1, 2] }, null)).toBeNull();
});

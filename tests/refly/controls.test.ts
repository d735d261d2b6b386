import { expect, test } from 'vitest';
import { headingTable, held, linearTangent, timeTable } from '../../src/refly/controls.ts';
import { FlightState } from '../../src/refly/flightState.ts';

function at(time_s: number, sinceStep_s = 0): FlightState {
  const s = new FlightState();
  s.time_s = time_s;
  s.sinceStep_s = sinceStep_s;
  return s;
}

test('a held control stays', () => {
  expect(held(0.7).at(at(12))).toBe(0.7);
});

test('linear tangent follows tan θ = a − b·t from the step’s start', () => {
  expect(Math.tan(linearTangent(0.5, 0.01).at(at(200, 30)))).toBeCloseTo(0.2, 12);
});

test('a table is linear between rows, held beyond its ends, and steps where two rows share a time', () => {
  const table = timeTable([0, 10, 10, 20], [1, 2, 5, 6]);
  expect(table.breaks_s).toEqual([10]);
  const times = [-5, 0, 5, 9.999999, 10, 15, 20, 30, 12, 3];
  const values = [1, 1, 1.5, 1.9999999, 5, 5.5, 6, 6, 5.2, 1.3];
  times.forEach((t, i) => {
    expect(table.at(at(t))).toBeCloseTo(values[i]!, 9);
  });
});

test('a single step acts from its very time on', () => {
  const step = timeTable([300, 300], [1, 0.5]);
  expect([299.999, 300, 301].map((t) => step.at(at(t)))).toEqual([1, 0.5, 0.5]);
});

test('headings go over north the short way', () => {
  const degree = Math.PI / 180;
  const table = headingTable([0, 10], [350 * degree, 10 * degree]);
  const heading = table.at(at(5));
  expect(Math.cos(heading)).toBeCloseTo(1, 12);
});

import { expect, test } from 'vitest';
import { compareAttempts } from '../../src/attempts/compare.ts';
import {
  attemptCurves,
  curvesNote,
  drawnByGroup,
  singleCurves,
  waysUp,
} from '../../src/exchange/comparisonCurves.ts';
import { invented } from '../attempts/inventedAttempts.ts';

const many = (count: number, pilots: number) =>
  compareAttempts(
    Array.from({ length: count }, (_, k) =>
      invented({
        name: `run-${k}`,
        pilot: `pilot ${k % pilots}`,
        attempt: k,
        margin: k,
        total: (s) => 4000 + 0.3 * s + k,
      }),
    ),
  );

test('few attempts are drawn one by one, each in its group’s look; one can stand in front', () => {
  const few = many(6, 2);
  const curves = attemptCurves(few, 'run-3', 'margin_m_s', (row) => few.curves.margin_m_s[row]!);
  expect(drawnByGroup(few)).toBe(false);
  expect(curvesNote(few)).toBe('');
  expect(curves).toHaveLength(6);
  expect(curves.at(-1)).toMatchObject({ name: 'run-3', bold: true, colour: '--ink' });
  const looks = new Map(curves.slice(0, -1).map((c) => [c.keyed, c.colour]));
  expect(new Set(looks.values()).size).toBe(2);
});

test('a thousand are drawn as the median and the middle nine tenths of each group', () => {
  const thousand = many(1000, 2);
  const values = (row: number) => thousand.curves.total_m_s[row]!;
  const curves = attemptCurves(thousand, 'run-7', 'total_m_s', values);
  expect(curves.map((c) => c.keyed)).toEqual(['pilot 0 (500)', 'pilot 1 (500)', 'run-7']);
  // Totals of pilot 0 lie 0, 2 … 998 over the line: median 499, middle nine tenths 49.9 to 948.1 (type 7).
  const [first] = curves;
  const at = 60;
  const base = 4000 + 0.3 * thousand.curves.spent_m_s[at]!;
  expect(first!.values[at]! - base).toBeCloseTo(499, 0);
  expect(first!.band!.low[at]! - base).toBeCloseTo(49.9, 0);
  expect(first!.band!.high[at]! - base).toBeCloseTo(948.1, 0);
  expect(singleCurves(thousand, 'total_m_s', values)).toHaveLength(1000);
  expect(curvesNote(thousand)).toContain('middle nine tenths');
});

test('more groups than looks are drawn as one', () => {
  const crowd = many(100, 20);
  const curves = attemptCurves(crowd, null, 'total_m_s', (row) => crowd.curves.total_m_s[row]!);
  expect(curves.map((c) => c.keyed)).toEqual(['all (100)']);
});

test('ways up share one axis and end where each ends', () => {
  const { downrange_m, altitude_m } = waysUp(many(2, 1));
  expect(downrange_m[0]).toBe(0);
  expect(downrange_m.at(-1)).toBe(1000);
  expect(altitude_m[0]!.at(-1)).toBe(2000);
});

import { expect, test } from 'vitest';
import {
  counted,
  formatDuration,
  formatFigure,
  formatLength_m,
  formatPressure_Pa,
  NO_FIGURE,
} from '../../src/units/figures.ts';

test('thousands are separated, whole digits kept, the minus sign is a minus sign', () => {
  expect(formatFigure(5541.2)).toBe('5,541');
  expect(formatFigure(1234567.8)).toBe('1,234,568');
  expect(formatFigure(-361.44, { decimals: 0 })).toBe('−361');
  expect(formatFigure(-0.02537)).toBe('−0.02537');
  expect(formatFigure(311)).toBe('311');
  expect(formatFigure(0.1 + 0.2)).toBe('0.3');
  expect(formatFigure(999.96)).toBe('1,000');
});

test('what rounds to zero has no sign', () => {
  expect(formatFigure(-0.3, { decimals: 0 })).toBe('0');
  expect(formatFigure(-0)).toBe('0');
  expect(formatFigure(0, { signed: true })).toBe('0');
  expect(formatFigure(12, { signed: true })).toBe('+12');
  expect(formatFigure(-12, { signed: true })).toBe('−12');
});

test('decimals asked for are kept', () => {
  expect(formatFigure(7.1, { decimals: 3 })).toBe('7.100');
  expect(formatFigure(1234.5, { decimals: 1 })).toBe('1,234.5');
});

test('very large and very small figures are written with powers of ten', () => {
  expect(formatFigure(3.21e-8, { digits: 2 })).toBe('3.2×10⁻⁸');
  expect(formatFigure(-1.5e20)).toBe('−1.5×10²⁰');
});

test('what is not a number is a dash', () => {
  expect(formatFigure(Number.NaN)).toBe(NO_FIGURE);
  expect(formatLength_m(Number.POSITIVE_INFINITY)).toBe(NO_FIGURE);
  expect(formatDuration(Number.NaN)).toBe(NO_FIGURE);
  expect(formatPressure_Pa(Number.NaN)).toBe(NO_FIGURE);
});

test('lengths are in metres below 10 km and in kilometres above', () => {
  expect(formatLength_m(0)).toBe('0 m');
  expect(formatLength_m(8420.3)).toBe('8,420 m');
  expect(formatLength_m(12.34)).toBe('12.3 m');
  expect(formatLength_m(-20_500)).toBe('−20.5 km');
  expect(formatLength_m(200_000)).toBe('200 km');
  expect(formatLength_m(6_578_137)).toBe('6,578.1 km');
});

test('pressures are in pascals below 1 kPa', () => {
  expect(formatPressure_Pa(36011.7)).toBe('36.01 kPa');
  expect(formatPressure_Pa(12.5)).toBe('12.5 Pa');
});

test('spans of time', () => {
  expect(formatDuration(0.35)).toBe('0.35 s');
  expect(formatDuration(-123.4)).toBe('−123 s');
  expect(formatDuration(725)).toBe('12 min 05 s');
  expect(formatDuration(12_000)).toBe('3 h 20 min');
  expect(formatDuration(187_200)).toBe('2 d 4 h');
  expect(formatDuration(7199.9)).toBe('2 h 00 min');
});

test('one is one, all else many', () => {
  expect([0, 1, 2, 2146].map((n) => counted(n, 'row is', 'rows are'))).toEqual([
    '0 rows are',
    '1 row is',
    '2 rows are',
    '2,146 rows are',
  ]);
});

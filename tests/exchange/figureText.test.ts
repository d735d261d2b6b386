import { describe, expect, test } from 'vitest';
import {
  assumptionTexts,
  intervalText,
  massForm,
  numberText,
  shown,
  valueText,
} from '../../src/exchange/figureText.ts';
import { figure, unavailable } from './handMadeReview.ts';

describe('numberText', () => {
  test.each([
    [1234567.89, 1, '1,234,567.9'],
    [-361.3, 0, '−361'],
    [-0.04, 1, '0.0'],
    [999.6, 0, '1,000'],
  ] as const)('%d with %d decimals is %s', (value, decimals, text) => {
    expect(numberText(value, decimals)).toBe(text);
  });
  test('what is no number is a dash', () => {
    expect(numberText(null, 0)).toBe('—');
    expect(numberText(Number.NaN, 0)).toBe('—');
  });
});

test('a small rocket’s grams of propellant are not shown as nothing', () => {
  const shownMass = (kg: number) => valueText(figure(kg, 0), massForm(figure(kg, 0)));
  expect([0.0125, 4.25, 12.5, 42000, 0].map(shownMass)).toEqual(['0.0125', '4.3', '13', '42,000', '0']);
});

describe('a figure', () => {
  test('shows no decimals where it is uncertain by one or more, one where it is better known', () => {
    expect(valueText(figure(87.44, 2), shown(figure(87.44, 2)))).toBe('87');
    expect(valueText(figure(87.44, 0.2), shown(figure(87.44, 0.2)))).toBe('87.4');
  });
  test('has an even interval as ±half and a lopsided one as its ends', () => {
    const lopsided = { value: 87, low: 86, high: 95, basis: 'identified' } as const;
    expect(intervalText(figure(10, 3), shown(figure(10, 3)))).toBe('±3');
    expect(intervalText(lopsided, shown(lopsided))).toBe('86…95');
  });
  test('never claims an interval of nothing for a small one', () => {
    expect(intervalText(figure(0.4, 0.01), { scale: 1, decimals: 1 })).toBe('±<0.1');
    const narrow = { value: 170.91, low: 170.91, high: 170.93, basis: 'derived' } as const;
    expect(intervalText(narrow, { scale: 1, decimals: 1 })).toBe('±<0.1');
    expect(intervalText(figure(0, 0), { scale: 1, decimals: 0 })).toBe('±0');
  });
  test('that is unavailable is a dash without an interval', () => {
    const none = unavailable('no mass');
    expect([valueText(none, shown(none)), intervalText(none, shown(none))]).toEqual(['—', '']);
  });
  test('tells what assumptions could move with signs', () => {
    const moved = { ...figure(282, 2), assumptions: [{ what: 'heading unseen', low: 272, high: 282 }] };
    expect(assumptionTexts(moved, shown(moved))).toEqual(['heading unseen: −10 … +0']);
  });
});

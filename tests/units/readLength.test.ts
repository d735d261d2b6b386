import { expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { readLength_m } from '../../src/units/readLength.ts';

test.each([
  ['90km', 90_000],
  ['90 km', 90_000],
  [' 90.5 KM ', 90_500],
  ['120000', 120_000],
  ['120,000 m', 120_000],
  ['120 000 m', 120_000],
  ['1.2e5', 120_000],
  ['300,000 ft', 91_440],
  ['100nmi', 185_200],
  ['100 n mi', 185_200],
  ['.5km', 500],
  ['0', 0],
])('%s is %d m', (text, metres) => {
  expect(readLength_m(text)).toBeCloseTo(metres, 9);
});

test.each(['', 'km', 'high', '-5km', '90 kg', '9,5 km', '90..5', 'Infinity', '1e999', '5 5', '--3'])(
  '“%s” is not an altitude',
  (text) => {
    let error: unknown;
    try {
      readLength_m(text);
    } catch (e) {
      error = e;
    }
    expect(error).toBeInstanceOf(LossbookError);
    expect((error as LossbookError).code).toBe('target-unreadable');
  },
);

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sortPositive } from '../../src/log/sortPositive.ts';

test('sorts as the platform does, few values and many, of any size and often the same', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 1e308, noNaN: true }), { minLength: 1, maxLength: 40 }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 }),
      fc.constantFrom(1, 300),
      (large, small, times) => {
        const values = Float64Array.from(
          Array.from({ length: times }, (_, k) => [...large, ...small].map((x) => x / (1 + k))).flat(),
        );
        expect(sortPositive(values.slice())).toEqual(values.slice().sort());
      },
    ),
    { seed: 20_310_504, numRuns: 100 },
  );
});

test('sorts in place, a part of an array too', () => {
  const all = Float64Array.from({ length: 10_001 }, (_, i) => (i * 7919) % 10_007);
  const part = all.subarray(1);
  expect(sortPositive(part)).toBe(part);
  expect(all[0]).toBe(0);
  expect(all.subarray(1)).toEqual(all.slice(1).sort());
});

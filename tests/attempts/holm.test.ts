import { expect, test } from 'vitest';
import { holm } from '../../src/attempts/holm.ts';

test('the example of the method: 0.01, 0.04, 0.03, 0.005 become 0.03, 0.06, 0.06, 0.02', () => {
  // As R's p.adjust(c(0.01, 0.04, 0.03, 0.005), "holm") prints (from memory).
  holm([0.01, 0.04, 0.03, 0.005]).forEach((p, i) => {
    expect(p).toBeCloseTo([0.03, 0.06, 0.06, 0.02][i]!, 12);
  });
});

test('never above one, one question stays as it is', () => {
  expect(holm([0.7, 0.9])).toEqual([1, 1]);
  expect(holm([0.2])).toEqual([0.2]);
  expect(holm([])).toEqual([]);
});

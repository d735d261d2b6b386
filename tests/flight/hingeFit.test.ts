import { expect, test } from 'vitest';
import { bendAtBreaks } from '../../src/flight/hingeFit.ts';
import { normalNumbers } from '../noise.ts';

const t = Float64Array.from({ length: 401 }, (_, i) => i * 0.1);
const corner = (x: number): number =>
  3 * x + (x > 20 ? -2 * (x - 20) + 0.1 * (x - 20) ** 2 : 0.05 * (x - 20) ** 2);

test('a corner between two parabolas is kept exactly', () => {
  const y = Float64Array.from(t, corner);
  const value = new Float64Array(t.length);
  const options = { degree: 2, order: 1, window_s: 8, breaks: [{ time_s: 20, side: 'after' }] } as const;
  bendAtBreaks({ t, y }, t, options, value, null);
  for (let i = 170; i <= 230; i++) expect(value[i]!).toBeCloseTo(corner(t[i]!), 8);
  // Further than half a window away nothing is touched.
  expect(value[100]).toBe(0);
});

test('both sides share the value at the break: its error is that of the whole window', () => {
  const next = normalNumbers(5);
  let squares = 0;
  for (let k = 0; k < 60; k++) {
    const y = Float64Array.from(t, (x) => corner(x) + next());
    const value = new Float64Array(1);
    const options = { degree: 2, order: 1, window_s: 16, breaks: [{ time_s: 20, side: 'after' }] } as const;
    bendAtBreaks({ t, y }, Float64Array.of(20), options, value, null);
    squares += (value[0]! - corner(20)) ** 2;
  }
  // One side alone leaves √(9/80) = 0.34, both 0.24 (end of a parabola, 80 samples a side).
  expect(Math.sqrt(squares / 60)).toBeLessThan(0.3);
});

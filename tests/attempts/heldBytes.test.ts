import { expect, test } from 'vitest';
import { heldBytes } from '../../src/attempts/heldBytes.ts';

test('grows with what is held, and counts what is shared once', () => {
  const list = Array.from({ length: 1000 }, (_, i) => i);
  const one = heldBytes({ list });
  expect(one).toBeGreaterThan(8 * 1000);
  expect(one).toBeLessThan(9 * 1000);
  expect(heldBytes({ a: list, b: list })).toBeLessThan(one + 100);
  expect(heldBytes(['a'.repeat(500)]) - heldBytes([''])).toBe(500);
  expect(heldBytes(new Float64Array(100))).toBeGreaterThanOrEqual(800);
});

import { expect, test } from 'vitest';
import { inOrder, plainJson } from '../../src/exchange/plainJson.ts';

test('figures in their order, control characters escaped, a line feed at the end', () => {
  const text = plainJson({ margin: { basis: 'derived', high: 3, low: 1, value: 2 }, name: 'a\u009bb' });
  expect(text.indexOf('"value"')).toBeLessThan(text.indexOf('"low"'));
  expect(text).toContain('a\\u009bb');
  expect(text.endsWith('}\n')).toBe(true);
  expect(JSON.parse(text).name).toBe('a\u009bb');
});

test('named fields come first, the others keep their order', () => {
  expect(Object.keys(inOrder({ c: 1, a: 2, b: 3 }, ['b', 'x']))).toEqual(['b', 'c', 'a']);
});

import { expect, test } from 'vitest';
import { plainDocument } from '../../src/exchange/plainDocument.ts';

test('every text at any depth is made harmless; numbers, nulls and order stay', () => {
  const document = { a: 'x\u001b[1m', list: [{ b: '\u0007y' }, 3, null], n: -0.1, yes: true };
  expect(plainDocument(document)).toEqual({ a: 'x', list: [{ b: 'y' }, 3, null], n: -0.1, yes: true });
});

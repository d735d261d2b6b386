import { expect, test } from 'vitest';
import { sameContent } from '../../../src/app/book/sameContent.ts';

const large = new Uint8Array(2_500_000).map((_, i) => i % 251);

test('the same bytes, in one piece or several', async () => {
  expect(await sameContent(new Blob([large]), new Blob([large.slice(0, 7), large.slice(7)]))).toBe(true);
});

test('one byte in the last piece makes them differ', async () => {
  const other = large.slice();
  other[2_499_999] = 255;
  expect(await sameContent(new Blob([large]), new Blob([other]))).toBe(false);
  expect(await sameContent(new Blob(['a']), new Blob(['ab']))).toBe(false);
});

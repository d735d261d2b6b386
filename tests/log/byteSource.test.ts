import { expect, test } from 'vitest';
import { blobSource, stretchOf, wholeOf } from '../../src/log/byteSource.ts';

const bytes = Uint8Array.from({ length: 1000 }, (_, i) => i % 251);
const source = blobSource(new Blob([bytes]));

test('a blob is read in part and whole', async () => {
  expect(source.size).toBe(1000);
  expect(await stretchOf(source, 300, 320)).toEqual(bytes.subarray(300, 320));
  expect(await stretchOf(source, 990, 2000)).toEqual(bytes.subarray(990));
  expect((await stretchOf(source, 1000, 1001)).length).toBe(0);
  expect(await wholeOf(source, 'x')).toEqual(bytes);
});

test('more than the limit is refused before anything is read', async () => {
  const large = { size: 600e6, read: () => Promise.reject(new Error('read')) };
  expect(() => wholeOf(large, 'x')).toThrow(expect.objectContaining({ code: 'log-too-large' }));
});

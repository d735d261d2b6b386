import { expect, test } from 'vitest';
import { blobSource } from '../../src/log/byteSource.ts';
import { NotAtHand, SparseBytes } from '../../src/log/sparseBytes.ts';

const bytes = Uint8Array.from({ length: 100 }, (_, i) => i);

test('parts of a file are searched and cut like the file', async () => {
  const sparse = await SparseBytes.of(blobSource(new Blob([bytes])), [
    { at: 0, length: 10 },
    { at: 90, length: 50 },
  ]);
  expect(sparse.length).toBe(100);
  expect(sparse.subarray(2, 5)).toEqual(bytes.subarray(2, 5));
  expect(sparse.subarray(95, 200)).toEqual(bytes.subarray(95));
  expect(sparse.subarray(100, 200).length).toBe(0);
  expect([sparse.indexOf(3), sparse.indexOf(96, 91), sparse.indexOf(1, 91), sparse.indexOf(1, 100)]).toEqual([
    3, 96, -1, -1,
  ]);
  for (const ask of [
    () => sparse.indexOf(50),
    () => sparse.indexOf(50, 50),
    () => sparse.subarray(5, 11),
    () => sparse.subarray(50, 51),
  ])
    expect(ask).toThrow(NotAtHand);
});

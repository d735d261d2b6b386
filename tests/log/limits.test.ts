import { expect, test } from 'vitest';
import { withinLimit } from '../../src/log/limits.ts';

test('a limit is named with the size that broke it', () => {
  expect(() => withinLimit('rows', 5_000_000, 'x')).toThrow(/5,000,000 rows, and at most 4,000,000 rows/u);
  expect(() => withinLimit('fileBytes', 600e6, 'x')).toThrow(/600 MB, and at most 512 MB/u);
  expect(() => withinLimit('columns', 1000, 'x')).not.toThrow();
});

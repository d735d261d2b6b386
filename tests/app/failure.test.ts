import { expect, test } from 'vitest';
import { failureOf, placeText } from '../../src/app/failure.ts';
import { LossbookError, type MessageCode, messageCodes } from '../../src/errors.ts';

/** Messages that only the command line can give rise to. */
const commandOnly: ReadonlySet<MessageCode> = new Set(
  messageCodes.filter((c) => /^(usage|map-|part-|world-|target-|file-unwritable|page-|port-)/.test(c)),
);

test('no advice on the page speaks of the command line', () => {
  for (const code of messageCodes) {
    if (commandOnly.has(code)) continue;
    const failure = failureOf(new LossbookError(code, {}, { file: 'x.csv' }));
    expect(failure.next, code).not.toMatch(/--\w|lossbook \w+/);
    expect(failure.where.file).toBe('x.csv');
  }
});

test('what nobody foresaw is said in words and without a stack', () => {
  const failure = failureOf(new TypeError('x is undefined'), { file: 'a.csv' });
  expect(failure.what).toContain('x is undefined');
  expect(failure.what).not.toContain('\n');
  expect(failure.where).toEqual({ file: 'a.csv' });
});

test('the place names file, row and column', () => {
  expect(placeText({ file: 'a.csv', row: 3, column: 'alt' })).toBe('a.csv, row 3, column “alt”');
  expect(placeText({})).toBe('');
});

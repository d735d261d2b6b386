import { expect, test } from 'vitest';
import { csvCell } from '../../src/exchange/csvCell.ts';

test.each([
  ['plain', 'plain'],
  ['a,b', '"a,b"'],
  ['say "x"', '"say ""x"""'],
  ['two\nlines', '"two\nlines"'],
  ['=HYPERLINK("http://x")', '"\'=HYPERLINK(""http://x"")"'],
  ['+1', "'+1"],
  ['-1', "'-1"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', "'\t=1"],
])('%j becomes %j (RFC 4180; OWASP on CSV injection)', (text, expected) => {
  expect(csvCell(text)).toBe(expected);
});

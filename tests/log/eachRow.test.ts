import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { eachRow, eachRowInTurns } from '../../src/log/eachRow.ts';
import { Pace } from '../../src/log/watch.ts';

const separators = [',', ';', '\t', '|'] as const;

function rows(text: string, separator: (typeof separators)[number] | 'blanks', plainQuotes = false) {
  const found: string[][] = [];
  eachRow(text, separator, plainQuotes, (cells) => {
    found.push(cells);
    return true;
  });
  return found;
}

/** The same by papaparse, which sees one more line behind the last line end. */
function judged(text: string, delimiter: string, fastMode?: boolean): string[][] {
  const { data } = Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    ...(fastMode === undefined ? {} : { fastMode }),
  });
  const last = data.at(-1);
  return text.endsWith('\n') && last?.length === 1 && last[0] === '' ? data.slice(0, -1) : data;
}

test('cells as papaparse cuts them, whatever stands where', () => {
  let quoted = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...separators),
      fc.array(
        fc.constantFrom('"', '""', '"a"', ',', ';', '\t', '|', '\n', ' ', 'a', '1.5', 'é', '"x, y";'),
        {
          maxLength: 40,
        },
      ),
      (separator, parts) => {
        const text = `${parts.join('')}\n`;
        expect(rows(text, separator)).toEqual(judged(text, separator));
        expect(rows(text, separator, true)).toEqual(judged(text, separator, true));
        if (rows(text, separator, true).length > rows(text, separator).length) quoted++;
      },
    ),
    { seed: 20_310_711, numRuns: 20_000 },
  );
  // Texts in which a line end stood between quotes.
  expect(quoted).toBeGreaterThan(1000);
});

test('a text that ends without its line end', () => {
  expect(rows('a,b\n1,2', ',')).toEqual([
    ['a', 'b'],
    ['1', '2'],
  ]);
  expect(rows('1,', ',')).toEqual([['1', '']]);
  expect(rows('1,"2"', ',')).toEqual([['1', '2']]);
  expect(rows('1,"2"  ', ',')).toEqual([['1', '2']]);
  expect(rows('1,"2\n3,4', ',')).toEqual([['1', '2\n3,4']]);
  expect(rows('', ',')).toEqual([]);
  expect(rows(' 1  2 \n3\t4', 'blanks')).toEqual([
    ['1', '2'],
    ['3', '4'],
  ]);
});

test('rows are handed over until enough are taken', () => {
  const taken: string[][] = [];
  eachRow('1\n2\n3\n', ',', false, (cells) => taken.push(cells) < 2);
  expect(taken).toEqual([['1'], ['2']]);
});

test('in turns come the same rows, with reports in between, and what a row throws', async () => {
  const text = Array.from({ length: 3000 }, (_, k) => `${k},"a, ${k}"\n`).join('');
  const shares: number[] = [];
  const pace = new Pace({ onProgress: (share) => shares.push(share) }, 'x');
  Object.defineProperty(pace, 'due', { value: true });
  const found: string[][] = [];
  await eachRowInTurns(
    text,
    ',',
    false,
    pace,
    (part) => part,
    (cells) => found.push(cells),
  );
  expect(found).toEqual(rows(text, ','));
  expect(shares.length).toBe(11);
  expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  const fail = () => {
    throw new RangeError('enough');
  };
  await expect(eachRowInTurns(text, ',', false, pace, (part) => part, fail)).rejects.toThrow('enough');
});

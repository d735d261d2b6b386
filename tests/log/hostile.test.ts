import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { fileKind } from '../../src/log/fileKind.ts';
import { readLog } from '../../src/log/readLog.ts';
import { bytesOf, inventedAscent, tableOf } from './inventedAscent.ts';

async function outcome(text: string): Promise<string> {
  const bytes = bytesOf(text);
  fileKind(bytes);
  return readLog(bytes, { name: 'x' }).then(
    () => 'read',
    (error: unknown) => {
      if (error instanceof LossbookError) return error.code;
      throw error;
    },
  );
}

describe('files made to break a reader', () => {
  const head = 'time_s,altitude_m,speed_m_s\n';

  test.each([
    ['ten million commas', ','.repeat(1e7), 'log-no-table'],
    ['ten million digits', '1'.repeat(1e7), 'log-no-table'],
    ['ten million blanks', ' '.repeat(1e7).concat('1'), 'log-no-table'],
    ['ten million line ends', '\n'.repeat(1e7).concat('1'), 'log-no-table'],
    ['a row of five million cells', `${head}1,2,3\n2,3,4\n${'a,'.repeat(5e6)}`, 'log-too-short'],
    ['a quote that is never closed', `${head}"${'a,b\n'.repeat(1e6)}`, 'log-no-table'],
    ['quotes only', '"'.repeat(1e6), 'log-no-table'],
    ['open brackets only', '['.repeat(1e6), 'log-json-broken'],
    ['a deep array', `${'['.repeat(1e5)}${']'.repeat(1e5)}`, 'log-no-table'],
    ['a deep object', `${'{"a":'.repeat(1e5)}1${'}'.repeat(1e5)}`, 'log-no-table'],
    [
      '200,000 names',
      `{${Array.from({ length: 2e5 }, (_, i) => `"k${i}":[1,2,3]`).join(',')}}`,
      'log-no-table',
    ],
    ['3,000 columns', `${'c,'.repeat(3000)}\n${'1,'.repeat(3000)}\n${'2,'.repeat(3000)}\n`, 'log-too-large'],
    ['brackets in a header', `${'('.repeat(1e5)},${'['.repeat(1e5)}\n1,2\n2,3\n`, 'log-no-time'],
  ])('%s', { timeout: 20_000 }, async (_, text, code) => {
    expect(await outcome(text)).toBe(code);
  });

  test('a message names thirty columns at most', async () => {
    const text = `${Array.from({ length: 900 }, (_, i) => `c${i}`).join(',')}\n${`${'1,'.repeat(899)}1\n`.repeat(20)}`;
    await expect(readLog(bytesOf(text), { name: 'x' })).rejects.toThrow(/c29, … \(900 in all\)/u);
  });

  test('headers keep their text, and a shared name changes nothing', async () => {
    const log = await readLog(
      bytesOf(
        tableOf(inventedAscent(20, 1), {
          time_s: (x) => x.time_s,
          altitude_m: (x) => x.altitude_m,
          speed_m_s: (x) => x.speed_m_s,
          ['__proto__']: () => 1,
          '<script>': () => 1,
          '\u001b]0;title\u0007': () => 1,
        }),
      ),
      { name: 'x' },
    );
    expect(log.unusedColumns).toEqual(['__proto__', '<script>', '\u001b]0;title\u0007']);
  });
});

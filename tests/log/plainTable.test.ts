import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { textOfBytes, unpackedBytes } from '../../src/log/decode.ts';
import { delimitedTable } from '../../src/log/delimitedTable.ts';
import { plainTable, plainTableOf } from '../../src/log/plainTable.ts';
import type { RawTable } from '../../src/log/rawTable.ts';
import { Pace } from '../../src/log/watch.ts';

/** Straight from bytes and by the tokeniser, papaparse: both tables with every cell, or what was thrown. */
async function both(bytes: Uint8Array): Promise<{ plain: unknown; judge: unknown } | null> {
  const { content } = await unpackedBytes(bytes, 'x');
  let plain: RawTable | null;
  try {
    plain = await plainTable(content, 'x', new Pace({}, 'x'), (part) => part);
  } catch (error) {
    if (!(error instanceof LossbookError)) throw error;
    return { plain: error.code, judge: judged(content) };
  }
  return plain === null ? null : { plain: cells(plain), judge: judged(content) };
}

function judged(content: Uint8Array): unknown {
  try {
    return cells(delimitedTable(textOfBytes(content, 'x').text, 'x'));
  } catch (error) {
    if (error instanceof LossbookError) return error.code;
    throw error;
  }
}

/** Numbers as their bits, so that −0 is not 0 and the last digit counts. */
function cells(table: RawTable): unknown {
  return {
    ...table,
    columns: table.columns.map(({ numbers, texts, ...rest }) => ({
      ...rest,
      numbers: Array.from(numbers, (x) => (Object.is(x, -0) ? '-0' : String(x))),
      texts: [...texts],
    })),
  };
}

const encode = (text: string) => new TextEncoder().encode(text);

async function taken(text: string | Uint8Array): Promise<boolean> {
  const tables = await both(typeof text === 'string' ? encode(text) : text);
  if (tables !== null) expect(tables.plain).toEqual(tables.judge);
  return tables !== null;
}

const folder = new URL('../corpus/', import.meta.url);
const corpus = readdirSync(folder)
  .filter((name) => !name.endsWith('.expected.json'))
  .map((name) => ({ name, bytes: new Uint8Array(readFileSync(new URL(name, folder))) }));

describe('plainTable, judged by papaparse', () => {
  test('every file of the corpus that it takes', async () => {
    const names: string[] = [];
    for (const { name, bytes } of corpus) if (bytes.length > 0 && (await taken(bytes))) names.push(name);
    // 97 of 136 when written.
    expect(names.length).toBeGreaterThan(60);
  });

  test('the corpus with bytes changed', async () => {
    const csv = corpus.filter(
      ({ name, bytes }) => !name.includes('json') && bytes.length > 50 && bytes[0] !== 0x1f,
    );
    let count = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.nat(csv.length - 1),
        fc.array(fc.tuple(fc.nat(9999), fc.constantFrom(...encode(' \t\n\r,;|.-+eE0159#"/x\u00e9'))), {
          minLength: 1,
          maxLength: 6,
        }),
        async (which, changes) => {
          const bytes = csv[which]?.bytes.slice() ?? new Uint8Array(1);
          for (const [at, value] of changes) bytes[Math.floor((at / 10_000) * bytes.length)] = value;
          if (await taken(bytes)) count++;
        },
      ),
      { seed: 20_310_504, numRuns: 2000 },
    );
    expect(count).toBeGreaterThan(800);
  });

  test('tables of any cells', async () => {
    const number = fc.oneof(
      fc.double().map(String),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((x) => x.toFixed(3)),
      fc.double({ min: -1e3, max: 1e3, noNaN: true }).map((x) => x.toExponential(4)),
      fc.bigInt({ min: -(10n ** 25n), max: 10n ** 25n }).map(String),
      fc.integer().map((x) => `00${x}`),
    );
    const cell = fc.oneof(
      { weight: 8, arbitrary: number },
      fc.constantFrom(
        '',
        ' ',
        ' 5 ',
        '5.',
        '.5',
        '.',
        '+5',
        '-',
        '--',
        '1e5',
        '1e',
        'e5',
        '1e999',
        '-0',
        '- 5',
        '5 5',
      ),
      fc.constantFrom(
        'NaN',
        'inf',
        '0x10',
        '1,5',
        '1.234,5',
        '12:00:01',
        '#',
        '% 5',
        '1d3',
        '1_000',
        "1'000",
        'a b',
      ),
      fc.stringMatching(/^[ -~]{0,70}$/u).map((s) => s.replaceAll('"', '')),
    );
    let count = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 2, maxLength: 15 }),
        fc.array(fc.array(number, { minLength: 4, maxLength: 4 }), { minLength: 8, maxLength: 20 }),
        fc.constantFrom(',', ';', '\t', '|', ' ', '  ', ' , '),
        fc.constantFrom('\n', '\r\n'),
        fc.constantFrom('t,h,v,m', 'Zeit [s],Höhe [m],v,m', '1,2,3,4'),
        fc.boolean(),
        async (odd, sound, separator, end, head, ended) => {
          const rows = [head.split(','), ...sound, ...odd, ...sound].map((row) => row.join(separator));
          if (await taken(rows.join(end) + (ended ? end : ''))) count++;
        },
      ),
      { seed: 20_310_504, numRuns: 2000 },
    );
    expect(count).toBeGreaterThan(1000);
  });

  test('numbers come out to the last bit', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.double({ min: -1e308, max: 1e308, noNaN: true }), { minLength: 3 }),
        async (xs) => {
          const written = xs.flatMap((x) => [
            String(x),
            x.toPrecision(15),
            x.toPrecision(6),
            x.toExponential(14),
          ]);
          const table = await plainTable(
            encode(`t,x\n${written.map((w, i) => `${i},${w}`).join('\n')}\n`),
            'x',
            new Pace({}, 'x'),
            (part) => part,
          );
          expect(Array.from(table?.columns[1]?.numbers ?? [])).toEqual(written.map(Number));
        },
      ),
      { seed: 20_310_504, numRuns: 500 },
    );
  });

  test('what is not plain is left to the tokeniser', async () => {
    const rows = '0,1\n1,2\n2,3\n'.repeat(8);
    expect(await taken(`t,h\n${rows}`)).toBe(true);
    expect(await taken(`t,"h"\n${rows}`)).toBe(false);
    expect(await taken(`t,h\n${rows}\0`)).toBe(false);
    expect(await taken('[[1,2],[3,4]]')).toBe(false);
    // Letters beyond ASCII may stand in the head, not a long way below it.
    expect(await taken(`t,Höhe\n${rows}`)).toBe(true);
    expect(await taken(`t,h\n${rows.repeat(1000)}5,°\n${rows.repeat(1000)}`)).toBe(false);
  });

  test('large tables, sampled as the text is', async () => {
    const row = (i: number): string => `${i},${(i * 1.25).toFixed(2)},${i % 7 === 0 ? 'note' : ''}\r\n`;
    const text = `# Höhe über See\r\nt,h,Ereignis\r\n${Array.from({ length: 30_000 }, (_, i) => row(i)).join('')}`;
    expect(await taken(text)).toBe(true);
    expect(await taken(`\ufeff${text}`)).toBe(true);
  });
});

describe('a large file read window by window', () => {
  const ROWS = 200_000;
  const head = '# Höhe über See\nt,h [m],v,Ereignis\n';
  const line = (i: number): string =>
    `${(i / 100).toFixed(2)},${(i * 1.237).toFixed(5)},${i % 9 === 0 ? '' : -i},${i % 50_000 === 7 ? `event ${i}` : '                         _'}`;
  const lines = Array.from({ length: ROWS }, (_, i) => line(i) + ' '.repeat(40));
  const body = lines.join('\n');
  const pace = new Pace({}, 'x');
  /** Gives no more than so many bytes at a time, as a slow disk may. */
  const read = async (bytes: Uint8Array, most = Number.POSITIVE_INFINITY) =>
    plainTableOf(
      {
        size: bytes.length,
        read: async (at, into) => {
          const part = bytes.subarray(at, at + Math.min(most, into.length));
          into.set(part);
          return part.length;
        },
      },
      'x',
      pace,
      (part) => part,
    );

  test('holds what it holds when read whole, wherever the windows end', async () => {
    for (const [text, most] of [
      [`${head}${body}\n`, Number.POSITIVE_INFINITY],
      [`\ufeff${head}${body}`, 3_000_017],
      [`${head}${body}\n1,2`, 999_983],
    ] as const) {
      const bytes = encode(text);
      expect(bytes.length).toBeGreaterThan(16e6);
      const whole = await plainTable(bytes, 'x', pace, (part) => part);
      const windows = await read(bytes, most);
      expect(windows?.rows).toBe(whole?.rows);
      expect(windows?.notes).toEqual(whole?.notes);
      windows?.columns.forEach(({ numbers, texts, header }, k) => {
        const other = whole?.columns[k];
        expect(header).toBe(other?.header);
        expect(Buffer.compare(bytesOf(numbers), bytesOf(other?.numbers ?? new Float64Array(0)))).toBe(0);
        expect(texts).toEqual(other?.texts);
      });
    }
  });

  test('and what is not plain, however far down, is left to those who read it whole', async () => {
    const spoiled = (row: number, cell: string): Uint8Array =>
      encode(head + lines.with(row, `1,2,3,${cell}`).join('\n'));
    expect((await read(spoiled(150_123, 'x'))) === null).toBe(false);
    for (const cell of ['"x"', '\0', '°', 'x\r'])
      expect((await read(spoiled(150_123, cell))) === null).toBe(true);
    expect((await read(encode(`${head}${body.replaceAll('\n', '\r\n')}`))) === null).toBe(true);
    // A line longer than the samples, one longer than what is carried between windows, and a small file.
    expect((await read(encode(`${head}${'1,'.repeat(9e6)}\n${body}`))) === null).toBe(true);
    expect((await read(spoiled(150_123, 'x'.repeat(1_500_000)))) === null).toBe(true);
    expect((await read(encode(`${head}1,2,3,\n`))) === null).toBe(true);
    expect((await read(Uint8Array.of(0x1f, 0x8b, ...new Uint8Array(10)))) === null).toBe(true);
  });
});

function bytesOf(numbers: Float64Array): Uint8Array {
  return new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength);
}

import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inventedAscent } from '../log/inventedAscent.ts';
import { outcomeOf } from './unsound.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

async function soundOutcome(bytes: Uint8Array): Promise<'log' | 'refused'> {
  const { outcome, wrong } = await outcomeOf(bytes);
  expect(wrong).toBe(null);
  return outcome === 'log' ? 'log' : 'refused';
}

const fixed = { seed: 20_310_504 } as const;

const headers = fc.constantFrom(
  'time',
  'time_s',
  'Time [ms]',
  'altitude',
  'Altitude (ft)',
  'speed',
  'velocity km/h',
  'v',
  'h',
  't',
  'mass_kg',
  'pitch',
  'throttle',
  'event',
  'stage',
  '__proto__',
  '',
  '"',
  '\u001b[2J',
);
const cells = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(String) },
  { weight: 2, arbitrary: fc.integer({ min: -10, max: 100_000 }).map(String) },
  fc.constantFrom(
    '',
    'NaN',
    '1e999',
    '-',
    '12:00:01',
    '2031-05-04T00:00:00Z',
    '1,5',
    '1.234,5',
    '"',
    '0x10',
    'inf',
    '#',
    '-9999',
  ),
  fc.string({ maxLength: 8 }),
);

describe('any bytes', () => {
  test('bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
        await soundOutcome(bytes);
      }),
      { ...fixed, numRuns: 1000 },
    );
  });

  test('text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 300 }), async (text) => {
        await soundOutcome(encode(text));
      }),
      { ...fixed, numRuns: 1000 },
    );
  });

  test('JSON of any shape', async () => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 6 }), fc.boolean(), async (text, cut) => {
        await soundOutcome(encode(cut ? text.slice(0, text.length >> 1) : text));
      }),
      { ...fixed, numRuns: 1500 },
    );
  });
});

describe('tables of anything', () => {
  test('delimited', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(headers, { minLength: 1, maxLength: 6 }),
        fc.array(fc.array(cells, { minLength: 1, maxLength: 7 }), { minLength: 1, maxLength: 30 }),
        fc.constantFrom(',', ';', '\t', '|', ' ', '  '),
        fc.constantFrom('\n', '\r\n', '\r'),
        async (head, rows, separator, end) => {
          await soundOutcome(encode([head, ...rows].map((row) => row.join(separator)).join(end)));
        },
      ),
      { ...fixed, numRuns: 1500 },
    );
  });

  test('times of every kind with motion', async () => {
    const times = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: -5, max: 50 }),
    );
    let logs = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(times, { minLength: 10, maxLength: 60 }), async (list) => {
        const rows = list.map((t, i) => `${t},${i * i},${2 * i}`);
        if ((await soundOutcome(encode(`time_s,altitude_m,speed_m_s\n${rows.join('\n')}\n`))) === 'log')
          logs++;
      }),
      { ...fixed, numRuns: 1500 },
    );
    expect(logs).toBeGreaterThan(100);
  });
});

describe('a sound log, spoiled', () => {
  const sound = [
    'time_s,altitude_m,speed_m_s,mass_kg,pitch_deg,event',
    ...inventedAscent(60, 2).map(
      (x) =>
        `${x.time_s},${x.altitude_m.toFixed(2)},${x.speed_m_s.toFixed(2)},${x.mass_kg},${x.pitch_deg.toFixed(2)},`,
    ),
  ].join('\n');
  const soundJson = JSON.stringify(inventedAscent(40, 2));

  test('characters changed, taken out, put in or cut off', async () => {
    const spoil = fc.record({
      // Counted in thousandths of the text.
      at: fc.nat(999),
      length: fc.integer({ min: 0, max: 40 }),
      insert: fc.string({ unit: 'grapheme', maxLength: 10 }),
    });
    let logs = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(spoil, { minLength: 1, maxLength: 4 }), fc.boolean(), async (list, json) => {
        let text = json ? soundJson : sound;
        for (const { at, length, insert } of list) {
          const from = Math.floor((at / 1000) * text.length);
          text = text.slice(0, from) + insert + text.slice(from + length);
        }
        if ((await soundOutcome(encode(text))) === 'log') logs++;
      }),
      { ...fixed, numRuns: 1500 },
    );
    expect(logs).toBeGreaterThan(500);
  });

  test('compressed and damaged', async () => {
    const packed = new Uint8Array(gzipSync(sound));
    await fc.assert(
      fc.asyncProperty(fc.nat(packed.length - 1), fc.nat(255), fc.boolean(), async (at, value, cut) => {
        const bytes = cut ? packed.slice(0, at) : packed.slice();
        if (!cut) bytes[at] = value;
        await soundOutcome(bytes);
      }),
      { ...fixed, numRuns: 500 },
    );
  });
});

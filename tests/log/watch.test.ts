import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { columnsCsv } from '../../src/exchange/columnsCsv.ts';
import { readLog, readLogStream } from '../../src/log/readLog.ts';
import { Pace } from '../../src/log/watch.ts';

/** Long enough that reading takes several turns. */
const rows = 300_000;
const time = Float64Array.from({ length: rows }, (_, i) => i / 500);
const altitude = time.map((t) => 2 * t * t);
const speed = time.map((t) => 4 * t);
const plain = columnsCsv([
  { name: 'time_s', values: time },
  { name: 'altitude_m', values: altitude },
  { name: 'speed_m_s', values: speed },
]);
/** Quotes keep it off the short way from bytes to numbers. */
const quoted = plain.replace('speed_m_s', '"speed_m_s"');
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** Without a comparison's long report, which would take longer than reading does. */
const same = (a: Float64Array | undefined, b: Float64Array | undefined): boolean =>
  a?.length === b?.length && a?.every((x, i) => Object.is(x, b?.[i])) === true;

const codeOf = (work: Promise<unknown>): Promise<unknown> =>
  work.then(
    () => 'read',
    (error: unknown) => (error instanceof LossbookError ? error.code : error),
  );

describe.each([
  ['plain', plain],
  ['quoted', quoted],
])('a large %s log', (_, text) => {
  const bytes = bytesOf(text);

  test('tells how far it is, rising, and reads the same', async () => {
    const shares: number[] = [];
    const watched = await readLogStream(new Blob([bytes]).stream(), {
      name: 'x',
      totalBytes: bytes.length,
      onProgress: (share) => shares.push(share),
    });
    const whole = await readLog(bytes, { name: 'x' });
    expect({ ...watched, time: 0, channels: 0 }).toEqual({ ...whole, time: 0, channels: 0 });
    expect(same(watched.time, whole.time)).toBe(true);
    for (const name of ['altitude', 'speed'] as const)
      expect(same(watched.channels[name], whole.channels[name])).toBe(true);
    expect(shares.length).toBeGreaterThan(0);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });

  test('is ended by its signal while it is read', async () => {
    const ending = new AbortController();
    const work = readLog(bytes, { name: 'x', signal: ending.signal, onProgress: () => ending.abort() });
    expect(await codeOf(work)).toBe('cancelled');
  });
});

test('a signal given before keeps reading from beginning', async () => {
  const signal = AbortSignal.abort();
  expect(await codeOf(readLog(bytesOf(plain), { name: 'x', signal }))).toBe('cancelled');
  let asked = 0;
  const chunks = (function* () {
    asked++;
    yield bytesOf(plain);
  })();
  expect(await codeOf(readLogStream(chunks, { name: 'x', signal }))).toBe('cancelled');
  expect(asked).toBe(0);
});

test('a source that fails passes its own failure on', async () => {
  const broken = (async function* () {
    yield bytesOf('time_s,');
    throw new Error('unplugged');
  })();
  expect(await codeOf(readLogStream(broken, { name: 'x' }))).toEqual(new Error('unplugged'));
});

test('nobody is told anything where nobody follows', () => {
  expect(new Pace({}, 'x').due).toBe(false);
});

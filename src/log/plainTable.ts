import { type ByteSource, stretchOf } from './byteSource.ts';
import { isGzip } from './gunzip.ts';
import { withinLimit } from './limits.ts';
import { type PlainLayout, plainLayout } from './plainLayout.ts';
import { PlainRows } from './plainRows.ts';
import type { RawTable } from './rawTable.ts';
import { RowCollector } from './rowCollector.ts';
import { HEAD_CHARACTERS, SAMPLE_SHARES } from './sampleLines.ts';
import { NotAtHand, SparseBytes } from './sparseBytes.ts';
import type { Pace } from './watch.ts';

const QUOTE = 34;
const NUL = 0;
const CR = 13;
const LF = 10;
/** Bytes handed on between two looks at the clock. */
const STRETCH_BYTES = 1 << 18;

/**
 * Reads delimited text straight from its bytes, where it is plain enough for that: no quotes, no NULs, nothing but
 * ASCII below the head. Every cell comes out as `delimitedTable` would read it.
 * @param bytes UTF-8 with LF line ends
 * @returns null for everything that is not plain, and for what makes no table
 * @throws LossbookError `log-too-large`, `cancelled`.
 */
export async function plainTable(
  bytes: Uint8Array,
  name: string,
  pace: Pace,
  share: (part: number) => number,
): Promise<RawTable | null> {
  if (bytes.indexOf(QUOTE) >= 0 || bytes.indexOf(NUL) >= 0) return null;
  const found = plainLayout(bytes, name);
  if (found === null) return null;
  const { collector, rows } = readerOf(found, name);
  for (let at = found.firstRow; at < bytes.length; ) {
    const line = bytes.indexOf(LF, at + STRETCH_BYTES);
    const end = line < 0 ? bytes.length : line + 1;
    if (!rows.read(bytes, at, end, found.asciiFrom)) return null;
    at = end;
    if (pace.due) await pace.report(share(at / bytes.length));
  }
  return collector.finish(bytes[bytes.length - 1] === LF);
}

function readerOf({ layout, expectedRows }: PlainLayout, name: string) {
  const collector = new RowCollector(layout, name, expectedRows);
  return { collector, rows: new PlainRows(layout, collector) };
}

/** Files below this are read whole. */
const LARGE_BYTES = 16e6;
/** Bytes fetched at a time: few enough to stay in the processor's cache until they are read. */
const WINDOW_BYTES = 1 << 20;
/** A line that is cut by a window's end may have this many bytes before it. */
const CARRIED_BYTES = 1 << 18;
/** Bytes beyond the head's characters that its letters may take, and room for a line to end. */
const HEAD_BYTES = HEAD_CHARACTERS + (1 << 17);
/** Bytes in which the sample lines at one place of the file are found. */
const SAMPLE_BYTES = 3 << 16;

/**
 * Reads a large file as `plainTable` does without ever holding it whole: its head and samples first, then window
 * after window.
 * @returns null for a file that is small, compressed, not plain, or that has CR line ends
 * @throws LossbookError `log-too-large`, `cancelled`, and what the source throws.
 */
export async function plainTableOf(
  source: ByteSource,
  name: string,
  pace: Pace,
  share: (part: number) => number,
): Promise<RawTable | null> {
  withinLimit('fileBytes', source.size, name);
  if (source.size < LARGE_BYTES) return null;
  const found = await layoutOf(source, name);
  if (found === null) return null;
  const { collector, rows } = readerOf(found, name);
  // Two windows in turn: while the one is read the other is filled.
  let now = new Uint8Array(CARRIED_BYTES + WINDOW_BYTES);
  let next = new Uint8Array(CARRIED_BYTES + WINDOW_BYTES);
  let at = found.firstRow;
  let carried = 0;
  let coming = source.read(at, now.subarray(CARRIED_BYTES));
  for (;;) {
    const came = await coming;
    if (came === 0) break;
    const base = at - CARRIED_BYTES;
    at += came;
    coming = at < source.size ? source.read(at, next.subarray(CARRIED_BYTES)) : Promise.resolve(0);
    // Where reading ends early nobody waits for the next window any more.
    coming.catch(() => undefined);
    const from = CARRIED_BYTES - carried;
    const filled = now.subarray(0, CARRIED_BYTES + came);
    const end = filled.lastIndexOf(LF) + 1;
    if (end > from && !rows.read(filled, from, end, found.asciiFrom - base)) return null;
    const begun = Math.max(end, from);
    carried = filled.length - begun;
    if (carried > CARRIED_BYTES) return null;
    next.set(filled.subarray(begun), CARRIED_BYTES - carried);
    [now, next] = [next, now];
    if (pace.due) await pace.report(share(at / source.size));
  }
  const rest = now.subarray(CARRIED_BYTES - carried, CARRIED_BYTES);
  if (carried > 0 && !rows.read(rest, 0, carried, found.asciiFrom - (at - carried))) return null;
  return collector.finish(carried === 0);
}

async function layoutOf(source: ByteSource, name: string): Promise<PlainLayout | null> {
  if (isGzip(await stretchOf(source, 0, 2))) return null;
  const parts = await SparseBytes.of(
    source,
    SAMPLE_SHARES.map((part) =>
      part === 0
        ? { at: 0, length: HEAD_BYTES }
        : { at: Math.floor(part * source.size), length: SAMPLE_BYTES },
    ),
  );
  if (parts.parts.some(({ bytes }) => [QUOTE, NUL, CR].some((sign) => bytes.indexOf(sign) >= 0))) return null;
  try {
    return plainLayout(parts, name);
  } catch (error) {
    // Lines so long that the samples do not hold them.
    if (error instanceof NotAtHand) return null;
    throw error;
  }
}

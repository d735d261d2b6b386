import { BytesAsText } from './bytesAsText.ts';
import { looksBinary } from './decode.ts';
import { looksLikeJson } from './jsonMark.ts';
import { withinLimit } from './limits.ts';
import { looksLikeOem } from './oemMark.ts';
import { reshapedText } from './reshapedText.ts';
import type { TableLayout } from './rowCollector.ts';
import { HEAD_CHARACTERS, SAMPLE_SHARES } from './sampleLines.ts';
import { isDataCell } from './separator.ts';
import type { ByteView } from './sparseBytes.ts';
import { tableLayout } from './tableLayout.ts';

const LF = 10;

/** What is known of a plain table before its rows are read. */
export interface PlainLayout {
  readonly layout: TableLayout;
  /** The byte at which the first line behind the head begins. */
  readonly firstRow: number;
  /** From this byte on nothing but ASCII is taken. */
  readonly asciiFrom: number;
  /** About how many rows there are; rather a little more. */
  readonly expectedRows: number;
}

/**
 * The layout of delimited text that is plain enough to be read straight from its bytes; null for any other. Quotes
 * and NULs are looked for by the caller.
 * @param bytes UTF-8 with LF line ends
 * @throws LossbookError `log-too-large`.
 */
export function plainLayout(bytes: ByteView, name: string): PlainLayout | null {
  const text = BytesAsText.of(bytes);
  if (text === null || !isOnlyTable(text.slice(0, HEAD_CHARACTERS), text.length)) return null;
  const layout = tableLayout(text, false);
  if (layout === null) return null;
  withinLimit('columns', layout.width, name);
  const { head } = layout;
  // A header that begins like a row could be repeated as one.
  if (isDataCell(head.headers?.find((cell) => cell.trim() !== '') ?? 'none')) return null;
  let at = text.mark;
  for (let line = 0; line < head.firstData; line++) {
    const end = bytes.indexOf(LF, at);
    if (end < 0) return null;
    at = end + 1;
  }
  return { layout, firstRow: at, asciiFrom: text.asciiFrom, expectedRows: expectedRows(bytes, at) };
}

/** Whether a text can be nothing but a table with its columns side by side. */
function isOnlyTable(begin: string, length: number): boolean {
  if (looksBinary(begin) || looksLikeJson(begin) || looksLikeOem(begin)) return false;
  const lines = begin.split('\n', 201).length;
  // Shapes that are told from two hundred lines must be seen whole.
  if (lines < 201 && begin.length < length) return false;
  return reshapedText(begin) === null;
}

/** Rows by the length of some lines along the file, with a little to spare. */
function expectedRows(bytes: ByteView, from: number): number {
  let rows = 0;
  let counted = from;
  SAMPLE_SHARES.forEach((share, k) => {
    const next = SAMPLE_SHARES[k + 1] ?? 1;
    const start = Math.max(from, Math.floor(share * bytes.length));
    const length = meanLine(bytes, share === 0 ? from : bytes.indexOf(LF, start) + 1);
    const end = Math.max(counted, Math.floor(next * bytes.length));
    if (length > 0) rows += (end - counted) / length;
    counted = end;
  });
  return Math.ceil(1.05 * rows) + 16;
}

/** Mean length of some lines from a line's beginning on, with their ends; 0 where there are none. */
function meanLine(bytes: ByteView, from: number): number {
  let at = from;
  let lines = 0;
  while (lines < 50 && at < bytes.length) {
    const end = bytes.indexOf(LF, at);
    if (end < 0) break;
    at = end + 1;
    lines++;
  }
  return lines === 0 ? 0 : (at - from) / lines;
}

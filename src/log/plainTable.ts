import { BytesAsText } from './bytesAsText.ts';
import { looksBinary } from './decode.ts';
import { looksLikeJson } from './jsonText.ts';
import { withinLimit } from './limits.ts';
import { looksLikeOem } from './oemTable.ts';
import { PlainRows } from './plainRows.ts';
import type { RawTable } from './rawTable.ts';
import { reshapedText } from './reshapedText.ts';
import { RowCollector } from './rowCollector.ts';
import { HEAD_CHARACTERS } from './sampleLines.ts';
import { isDataCell } from './separator.ts';
import { tableLayout } from './tableLayout.ts';
import type { Pace } from './watch.ts';

const QUOTE = 34;
const NUL = 0;
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
  const collector = new RowCollector(layout, name, expectedRows(bytes, at));
  const rows = new PlainRows(bytes, layout, collector, text.asciiFrom);
  while (at < bytes.length) {
    const next = rows.read(at, at + STRETCH_BYTES);
    if (next < 0) return null;
    at = next;
    if (pace.due) await pace.report(share(at / bytes.length));
  }
  return collector.finish(bytes[bytes.length - 1] === LF);
}

/** Whether a text can be nothing but a table with its columns side by side. */
function isOnlyTable(begin: string, length: number): boolean {
  if (looksBinary(begin) || looksLikeJson(begin) || looksLikeOem(begin)) return false;
  const lines = begin.split('\n', 201).length;
  // Shapes that are told from two hundred lines must be seen whole.
  if (lines < 201 && begin.length < length) return false;
  return reshapedText(begin) === null;
}

/** Rows by the length of the first ones, with a little to spare. */
function expectedRows(bytes: Uint8Array, from: number): number {
  let at = from;
  let lines = 0;
  while (lines < 1000 && at < bytes.length) {
    const end = bytes.indexOf(LF, at);
    if (end < 0) break;
    at = end + 1;
    lines++;
  }
  return lines === 0 ? 0 : Math.ceil((1.02 * lines * (bytes.length - from)) / (at - from)) + 16;
}

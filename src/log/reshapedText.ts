import { isDataCell, splitLine } from './separator.ts';

const pair =
  /([\p{L}_][\p{L}\p{N}_. ]*?(?:\s*[[(][^\])]*[\])])?)\s*[=:]\s*([+-]?(?:\d[\d.]*(?:e[+-]?\d+)?|\.\d+))(?=$|[\s,;|])/giu;

/** Lines looked at before a shape is believed. */
const LINES_LOOKED_AT = 40;
const LONGEST_LINE = 10_000_000;

/**
 * A table whose columns do not stand side by side, written as one that does: `time=1 alt=2 …` on each line, one
 * line per channel, or one line per value. Null for a text of none of these shapes.
 */
export function reshapedText(text: string): string | null {
  return labelledLines(text) ?? channelPerLine(text);
}

function linesOf(text: string): string[] {
  return text.split('\n').filter((line) => line.trim() !== '');
}

/** `time=1.5 alt=20 vel=30` and `time: 1.5, alt: 20`: the labels become the header. */
function labelledLines(text: string): string | null {
  const first = text
    .slice(0, 20_000)
    .split('\n', LINES_LOOKED_AT)
    .filter((line) => line.trim() !== '');
  const labelled = first.filter((line) => [...line.slice(0, 5000).matchAll(pair)].length >= 2);
  if (labelled.length < 2 || labelled.length < 0.6 * first.length) return null;
  const columns = new Map<string, number>();
  const rows = linesOf(text).map((line) => {
    const cells: string[] = [];
    for (const [, label = '', value = ''] of line.slice(0, 5000).matchAll(pair)) {
      const name = label.trim();
      if (!columns.has(name) && columns.size < 1000) columns.set(name, columns.size);
      const at = columns.get(name);
      if (at !== undefined) cells[at] = value;
    }
    return cells;
  });
  const width = columns.size;
  const line = (cells: readonly (string | undefined)[]): string =>
    Array.from({ length: width }, (_, i) => cells[i] ?? '').join('\t');
  return `${line([...columns.keys()])}\n${rows
    .filter((cells) => cells.length > 0)
    .map(line)
    .join('\n')}\n`;
}

/** One line for each channel, its name first: turned so that each channel is a column. */
function channelPerLine(text: string): string | null {
  const lines = text.split('\n', 200).filter((line) => line.trim() !== '');
  if (lines.length < 3 || lines.length > 100 || text.length > LONGEST_LINE) return null;
  for (const separator of ['\t', ';', ',', '|', 'blanks'] as const) {
    const cells = lines.map((line) => splitLine(line, separator));
    const width = cells[0]?.length ?? 0;
    if (width < 10 || width < 2 * lines.length || cells.some((row) => row.length !== width)) continue;
    const named = cells.every(
      ([name, ...values]) =>
        !isDataCell(name ?? '') &&
        (name ?? '').trim() !== '' &&
        values.filter(isDataCell).length > 0.7 * values.length,
    );
    if (!named) continue;
    return `${Array.from({ length: width }, (_, i) => cells.map((row) => (row[i] ?? '').trim()).join('\t')).join('\n')}\n`;
  }
  return null;
}

import Papa from 'papaparse';
import type { Separator } from './separator.ts';
import type { Pace } from './watch.ts';

/** Characters handed to the tokeniser at a time, which bounds its memory. */
const PIECE_CHARACTERS = 1 << 20;

/** The cells of a line whose columns are parted by blanks. */
export function blankCells(line: string): string[] {
  return line.trim().split(/[ \t]+/u);
}

/** True where quotes cannot be pairs around cells (an inch mark, a quote that is never closed). */
export function quotesAreText(text: string): boolean {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count++;
  return count % 2 === 1;
}

function config(separator: Separator, plainQuotes: boolean): object {
  return {
    delimiter: separator,
    newline: '\n',
    chunkSize: PIECE_CHARACTERS,
    // The tokeniser's fast mode takes quotes as letters.
    ...(plainQuotes ? { fastMode: true } : {}),
  };
}

/** Hands over the cells of every line until `take` returns false. */
export function eachRow(
  text: string,
  separator: Separator,
  plainQuotes: boolean,
  take: (cells: string[]) => boolean,
): void {
  if (separator === 'blanks') {
    for (let at = 0; at < text.length; ) {
      const found = text.indexOf('\n', at);
      const end = found < 0 ? text.length : found;
      if (!take(blankCells(text.slice(at, end)))) return;
      at = end + 1;
    }
    return;
  }
  Papa.parse<string[]>(text, {
    ...config(separator, plainQuotes),
    step: ({ data }, parser) => {
      if (!take(data)) parser.abort();
    },
  } as Papa.ParseConfig<string[]>);
}

/** Hands over the cells of every line, and lets the reading's watcher have a turn now and then. */
export async function eachRowInTurns(
  text: string,
  separator: Separator,
  plainQuotes: boolean,
  pace: Pace,
  share: (part: number) => number,
  take: (cells: string[]) => void,
): Promise<void> {
  if (separator === 'blanks') {
    for (let at = 0; at < text.length; ) {
      const found = text.indexOf('\n', at);
      const end = found < 0 ? text.length : found;
      take(blankCells(text.slice(at, end)));
      at = end + 1;
      if (pace.due) await pace.report(share(at / text.length));
    }
    return;
  }
  await new Promise<void>((resolve, reject) => {
    let failed = false;
    const fail = (error: unknown, parser: Papa.Parser): void => {
      failed = true;
      parser.abort();
      reject(error);
    };
    let pieces = 0;
    Papa.parse<string[]>(text, {
      ...config(separator, plainQuotes),
      // Piece by piece and not row by row: each pause has the tokeniser begin its piece again.
      chunk: ({ data }: Papa.ParseResult<string[]>, parser: Papa.Parser) => {
        if (failed) return;
        pieces++;
        try {
          for (const cells of data) take(cells);
        } catch (error) {
          fail(error, parser);
          return;
        }
        if (!pace.due) return;
        parser.pause();
        pace.report(share(Math.min(1, (pieces * PIECE_CHARACTERS) / text.length))).then(
          () => parser.resume(),
          (error: unknown) => fail(error, parser),
        );
      },
      complete: () => {
        if (!failed) resolve();
      },
    } as Papa.ParseConfig<string[]>);
  });
}

import type { Separator } from './separator.ts';
import type { Pace } from './watch.ts';

/** Rows between two looks at the clock. */
const ROWS_BETWEEN_LOOKS = 256;

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

/** Cuts a text with LF line ends into the cells of its lines. */
class Tokeniser {
  /** Where the next line begins; beyond the text once there is none. */
  at = 0;
  private readonly text: string;
  private readonly separator: Separator;
  private readonly quoted: boolean;
  /** Where the next line end and separator stand; each is sought once. */
  private lineEnd = -1;
  private cellEnd = -1;

  constructor(text: string, separator: Separator, plainQuotes: boolean) {
    this.text = text;
    this.separator = separator;
    this.quoted = separator !== 'blanks' && !plainQuotes && text.includes('"');
  }

  /** The cells of the next line; null behind the last. */
  next(): string[] | null {
    if (this.at >= this.text.length) return null;
    if (this.quoted) return this.quotedLine();
    const line = this.upTo(this.nextOf('\n', -1));
    return this.separator === 'blanks' ? blankCells(line) : line.split(this.separator);
  }

  /** The text from here to before `end`; goes on behind it. */
  private upTo(end: number): string {
    const { text, at } = this;
    this.at = end + 1;
    return text.slice(at, end);
  }

  /** Where the next such letter stands, or the text ends; `known` is where the last look found one. */
  private nextOf(letter: string, known: number): number {
    if (known >= this.at) return known;
    const found = this.text.indexOf(letter, this.at);
    return found < 0 ? this.text.length : found;
  }

  /** A line in which cells may stand in quotes, with separators and line ends as letters (RFC 4180). */
  private quotedLine(): string[] {
    const { text, separator } = this;
    const cells: string[] = [];
    for (;;) {
      if (text[this.at] === '"') cells.push(this.quotedCell());
      else {
        this.lineEnd = this.nextOf('\n', this.lineEnd);
        this.cellEnd = this.nextOf(separator, this.cellEnd);
        cells.push(this.upTo(Math.min(this.lineEnd, this.cellEnd)));
      }
      // Behind the cell its separator was passed over, or the end of its line or of the text.
      if (text[this.at - 1] !== separator) return cells;
    }
  }

  /** A quote that neither cell nor line ends behind, but for blanks, is a letter of the cell. */
  private quotedCell(): string {
    const { text, separator } = this;
    const from = this.at + 1;
    for (let quote = text.indexOf('"', from); quote >= 0; quote = text.indexOf('"', quote + 1)) {
      if (text[quote + 1] === '"') {
        quote++;
        continue;
      }
      let end = quote + 1;
      while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end]?.trim() === '')
        end++;
      if (end < text.length && text[end] !== separator && text[end] !== '\n') continue;
      this.at = end + 1;
      return text.slice(from, quote).replaceAll('""', '"');
    }
    this.at = from;
    return this.upTo(text.length);
  }
}

/** Hands over the cells of every line until `take` returns false. */
export function eachRow(
  text: string,
  separator: Separator,
  plainQuotes: boolean,
  take: (cells: string[]) => boolean,
): void {
  const lines = new Tokeniser(text, separator, plainQuotes);
  for (let cells = lines.next(); cells !== null; cells = lines.next()) if (!take(cells)) return;
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
  const lines = new Tokeniser(text, separator, plainQuotes);
  let rows = 0;
  for (let cells = lines.next(); cells !== null; cells = lines.next()) {
    take(cells);
    if (++rows % ROWS_BETWEEN_LOOKS === 0 && pace.due) await pace.report(share(lines.at / text.length));
  }
}

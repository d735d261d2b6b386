import { blankCells } from './eachRow.ts';
import type { RowCollector, TableLayout } from './rowCollector.ts';

const LF = 10;
const BLANK = 32;
const TAB = 9;
const PLUS = 43;
const MINUS = 45;
const DIGIT_0 = 48;
const DIGIT_9 = 57;
const LOWER_E = 101;
const UPPER_E = 69;
/** Digits that a double holds exactly as a whole number, whatever they are. */
const MOST_DIGITS = 15;
/** Largest power of ten that is an exact double. */
const MOST_SCALE = 22;
/** Longer cells are handed on as text. */
const LONGEST_NUMBER = 40;

/** Powers of ten that are exact doubles; a whole number below 2^53 times or over one of them is rounded once. */
const POWERS = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

const ascii = new TextDecoder('windows-1252');
const letters = new TextDecoder('utf-8', { ignoreBOM: true });

/** Cells are short, and a decoder's call costs more than they do. */
function asciiText(bytes: Uint8Array): string {
  return bytes.length <= LONGEST_NUMBER
    ? String.fromCharCode.apply(null, bytes as unknown as number[])
    : ascii.decode(bytes);
}

/**
 * Reads rows of plain numbers straight from bytes into a collector's columns; cells and lines of any other kind are
 * handed on as text. Numbers come out as `Number()` gives them: mantissas of up to 15 digits with powers of ten up
 * to 22 exactly (W. D. Clinger, “How to read floating point numbers accurately”, PLDI 1990, §2), others by
 * `Number()` itself.
 */
export class PlainRows {
  private readonly bytes: Uint8Array;
  private readonly collector: RowCollector;
  private readonly separator: string;
  private readonly separatorByte: number;
  private readonly blanks: boolean;
  private readonly decimal: number;
  private readonly width: number;
  /** From this byte on nothing but ASCII is taken. */
  private readonly asciiFrom: number;
  /** The last line end. */
  private readonly lastEnd: number;
  private readonly values: Float64Array;
  /** Bounds of each cell that is no plain number, else -1. */
  private readonly textFrom: Int32Array;
  private readonly textTo: Int32Array;

  constructor(bytes: Uint8Array, layout: TableLayout, collector: RowCollector, asciiFrom: number) {
    this.bytes = bytes;
    this.collector = collector;
    this.separator = layout.separator;
    this.blanks = layout.separator === 'blanks';
    this.separatorByte = this.blanks ? BLANK : layout.separator.charCodeAt(0);
    const decimal = layout.numberStyle.decimal.charCodeAt(0);
    this.decimal = decimal === this.separatorByte ? -1 : decimal;
    this.width = layout.width;
    this.asciiFrom = asciiFrom;
    this.lastEnd = bytes.lastIndexOf(LF);
    this.values = new Float64Array(layout.width);
    this.textFrom = new Int32Array(layout.width);
    this.textTo = new Int32Array(layout.width);
  }

  /** Reads the lines that begin before `until`; returns where the next one begins, -1 where the text is not plain. */
  read(from: number, until: number): number {
    const { bytes } = this;
    let at = from;
    while (at < bytes.length && at < until) {
      // A line without its end is read as any other text: within the others no byte need be asked whether it is there.
      const next = at <= this.lastEnd ? this.plainLine(at) : 0;
      if (next > 0) {
        at = next;
        continue;
      }
      const found = bytes.indexOf(LF, at);
      const end = found < 0 ? bytes.length : found;
      if (!this.otherLine(at, end)) return -1;
      at = end + 1;
    }
    return at;
  }

  /** Reads a line that has its end as a whole row of plain cells; 0 where it is none, else where the next begins. */
  private plainLine(from: number): number {
    const { bytes, width, blanks, separatorByte, decimal, values, textFrom, textTo } = this;
    let at = from;
    let texts = 0;
    let filled = 0;
    for (let column = 0; column < width; column++) {
      const cell = at;
      let c = bytes[at]!;
      // Blanks around a number do not count.
      while ((c === BLANK || c === TAB) && (blanks || c !== separatorByte)) c = bytes[++at]!;
      const begin = at;
      let negative = false;
      if (c === MINUS || c === PLUS) {
        negative = c === MINUS;
        c = bytes[++at]!;
      }
      const whole = at;
      while (c === DIGIT_0) c = bytes[++at]!;
      let first = at;
      let mantissa = 0;
      while (c >= DIGIT_0 && c <= DIGIT_9) {
        mantissa = mantissa * 10 + (c - DIGIT_0);
        c = bytes[++at]!;
      }
      let digits = at - first;
      let seen = at - whole;
      let scale = 0;
      if (c === decimal) {
        const point = at;
        c = bytes[++at]!;
        if (digits === 0) while (c === DIGIT_0) c = bytes[++at]!;
        first = at;
        while (c >= DIGIT_0 && c <= DIGIT_9) {
          mantissa = mantissa * 10 + (c - DIGIT_0);
          c = bytes[++at]!;
        }
        digits += at - first;
        scale = at - point - 1;
        seen += scale;
      }
      let sound = seen > 0;
      if (sound && (c === LOWER_E || c === UPPER_E)) {
        c = bytes[++at]!;
        let down = false;
        if (c === MINUS || c === PLUS) {
          down = c === MINUS;
          c = bytes[++at]!;
        }
        let power = 0;
        first = at;
        while (c >= DIGIT_0 && c <= DIGIT_9 && at - first < 5) {
          power = power * 10 + (c - DIGIT_0);
          c = bytes[++at]!;
        }
        sound = at > first;
        scale += down ? power : -power;
      }
      const stop = at;
      while ((c === BLANK || c === TAB) && (blanks || c !== separatorByte)) c = bytes[++at]!;
      // In text parted by blanks a number must end at one.
      const ended = c === LF || (blanks ? at > stop : c === separatorByte);
      textFrom[column] = -1;
      if (ended && sound && at - cell <= LONGEST_NUMBER) {
        filled++;
        if (digits <= MOST_DIGITS && scale <= MOST_SCALE && scale >= -MOST_SCALE) {
          const value = scale > 0 ? mantissa / POWERS[scale]! : mantissa * POWERS[-scale]!;
          values[column] = negative ? -value : value;
        } else {
          textFrom[column] = begin;
          textTo[column] = stop;
          texts++;
        }
      } else if (ended && stop === begin && !blanks) {
        values[column] = Number.NaN;
      } else {
        // A comment, a rule or a repeated header is told by its first cell.
        if (filled === 0 || blanks) return 0;
        while (c !== LF && c !== separatorByte) c = bytes[++at]!;
        textFrom[column] = cell;
        textTo[column] = at;
        texts++;
      }
      if (column === width - 1) {
        if (c !== LF) return 0;
      } else if (c === LF) return 0;
      else if (!blanks) at++;
    }
    if (texts > 0 && !this.isAscii(from, at)) return 0;
    this.put(texts);
    return at + 1;
  }

  private put(texts: number): void {
    const { collector, width, values, textFrom, textTo, bytes } = this;
    const { builders, rows } = collector;
    if (texts === 0) {
      for (let column = 0; column < width; column++) builders[column]!.putNumber(rows, values[column]!);
    } else {
      for (let column = 0; column < width; column++) {
        const from = textFrom[column]!;
        if (from < 0) builders[column]!.putNumber(rows, values[column]!);
        else builders[column]!.putText(rows, asciiText(bytes.subarray(from, textTo[column]!)));
      }
    }
    collector.rowDone(width);
  }

  /** Hands a line of any kind to the collector as the tokeniser would; false where it is not plain. */
  private otherLine(from: number, end: number): boolean {
    if (end > this.asciiFrom && !this.isAscii(Math.max(from, this.asciiFrom), end)) return false;
    const line = letters.decode(this.bytes.subarray(from, end));
    this.collector.take(this.blanks ? blankCells(line) : line.split(this.separator));
    return true;
  }

  private isAscii(from: number, to: number): boolean {
    for (let i = from; i < to; i++) if (this.bytes[i]! > 127) return false;
    return true;
  }
}

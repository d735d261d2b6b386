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
    this.values = new Float64Array(layout.width);
    this.textFrom = new Int32Array(layout.width);
    this.textTo = new Int32Array(layout.width);
  }

  /** Reads the lines that begin before `until`; returns where the next one begins, -1 where the text is not plain. */
  read(from: number, until: number): number {
    const { bytes } = this;
    let at = from;
    while (at < bytes.length && at < until) {
      const next = this.plainLine(at);
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

  /** Reads a line as a whole row of plain cells; 0 where it is none, else where the next line begins. */
  private plainLine(from: number): number {
    const { bytes, width, blanks, separatorByte, decimal, values, textFrom, textTo } = this;
    const end = bytes.length;
    let at = from;
    let texts = 0;
    let filled = 0;
    for (let column = 0; column < width; column++) {
      const cell = at;
      // Blanks around a number do not count.
      let c = at < end ? bytes[at]! : LF;
      while ((c === BLANK || c === TAB) && (blanks || c !== separatorByte)) c = ++at < end ? bytes[at]! : LF;
      const begin = at;
      let negative = false;
      if (c === MINUS || c === PLUS) {
        negative = c === MINUS;
        c = ++at < end ? bytes[at]! : LF;
      }
      let mantissa = 0;
      let digits = 0;
      let scale = 0;
      const whole = at;
      while (c >= DIGIT_0 && c <= DIGIT_9) {
        mantissa = mantissa * 10 + (c - DIGIT_0);
        if (mantissa !== 0) digits++;
        c = ++at < end ? bytes[at]! : LF;
      }
      let seen = at - whole;
      if (c === decimal) {
        c = ++at < end ? bytes[at]! : LF;
        const fraction = at;
        while (c >= DIGIT_0 && c <= DIGIT_9) {
          mantissa = mantissa * 10 + (c - DIGIT_0);
          if (mantissa !== 0) digits++;
          c = ++at < end ? bytes[at]! : LF;
        }
        scale = at - fraction;
        seen += scale;
      }
      let sound = seen > 0;
      if (sound && (c === LOWER_E || c === UPPER_E)) {
        c = ++at < end ? bytes[at]! : LF;
        let down = false;
        if (c === MINUS || c === PLUS) {
          down = c === MINUS;
          c = ++at < end ? bytes[at]! : LF;
        }
        let power = 0;
        const first = at;
        while (c >= DIGIT_0 && c <= DIGIT_9 && at - first < 5) {
          power = power * 10 + (c - DIGIT_0);
          c = ++at < end ? bytes[at]! : LF;
        }
        sound = at > first;
        scale += down ? power : -power;
      }
      const stop = at;
      while ((c === BLANK || c === TAB) && (blanks || c !== separatorByte)) c = ++at < end ? bytes[at]! : LF;
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
        while (c !== LF && c !== separatorByte) c = ++at < end ? bytes[at]! : LF;
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

import { blankCells } from './eachRow.ts';
import { fourDigits, WORD } from './fourDigits.ts';
import type { RowCollector, TableLayout } from './rowCollector.ts';

const LF = 10;
const CR = 13;
const NUL = 0;
const QUOTE = 34;
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
/** Digits that a 32-bit integer holds, whatever they are. */
const INTEGER_DIGITS = 9;
/** Largest power of ten that is an exact double. */
const MOST_SCALE = 22;
/** Longer cells are handed on as text. */
const LONGEST_NUMBER = 40;
/** Rows of numbers that are handed on together. */
const BLOCK_ROWS = 512;
/** Columns of a block lie a little farther apart than a power of two, which would have them share cache lines. */
const BLOCK_STRIDE = BLOCK_ROWS + 8;

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
  private readonly collector: RowCollector;
  private readonly separator: string;
  private readonly separatorByte: number;
  private readonly blanks: boolean;
  private readonly decimal: number;
  private readonly width: number;
  private bytes = new Uint8Array(0);
  private view = new DataView(this.bytes.buffer);
  /** From this byte on nothing but ASCII is taken. */
  private asciiFrom = 0;
  /** Values of the rows that wait to be handed on, column by column. */
  private readonly block: Float64Array;
  private waiting = 0;
  /** Texts in the line so far, and whether the last cell that is none of the simplest kind is a number. */
  private texts = 0;
  private oddIsNumber = false;
  /** Columns of the line's cells that are no plain numbers, and their bounds. */
  private readonly textColumn: Int32Array;
  private readonly textFrom: Int32Array;
  private readonly textTo: Int32Array;

  constructor(layout: TableLayout, collector: RowCollector) {
    this.collector = collector;
    this.separator = layout.separator;
    this.blanks = layout.separator === 'blanks';
    this.separatorByte = this.blanks ? BLANK : layout.separator.charCodeAt(0);
    const decimal = layout.numberStyle.decimal.charCodeAt(0);
    this.decimal = decimal === this.separatorByte ? -1 : decimal;
    this.width = layout.width;
    this.block = new Float64Array(layout.width * BLOCK_STRIDE);
    this.textColumn = new Int32Array(layout.width);
    this.textFrom = new Int32Array(layout.width);
    this.textTo = new Int32Array(layout.width);
  }

  /**
   * Reads the lines between two bytes, of which the last may lack its end; false where they are not plain.
   * @param asciiFrom from this byte on nothing but ASCII is taken
   */
  read(bytes: Uint8Array, from: number, to: number, asciiFrom: number): boolean {
    this.bytes = bytes as Uint8Array<ArrayBuffer>;
    this.view = new DataView(bytes.buffer as ArrayBuffer, bytes.byteOffset, bytes.length);
    this.asciiFrom = asciiFrom;
    const lastEnd = bytes[to - 1] === LF ? to - 1 : to > from ? bytes.lastIndexOf(LF, to - 1) : -1;
    for (let at = from; at < to; ) {
      // A line without its end is read as any other text: within the others no byte need be asked whether it is there.
      const next = at <= lastEnd ? this.plainLine(at) : 0;
      if (next > 0) {
        at = next;
        continue;
      }
      const end = at <= lastEnd ? bytes.indexOf(LF, at) : to;
      if (!this.otherLine(at, end)) return false;
      at = end + 1;
    }
    this.handOn();
    return true;
  }

  /** Reads a line that has its end as a whole row of plain cells; 0 where it is none, else where the next begins. */
  private plainLine(from: number): number {
    const { bytes, view, width, blanks, separatorByte, decimal, block, waiting } = this;
    const lastWord = bytes.length - WORD;
    let at = from;
    let numbers = 0;
    this.texts = 0;
    for (let column = 0; column < width; column++) {
      const cell = at;
      const place = column * BLOCK_STRIDE + waiting;
      // Most cells are a few digits and a point, and need no more than this.
      if (!blanks) {
        const negative = bytes[at] === MINUS;
        if (negative) at++;
        let begin = at;
        let whole = 0;
        // A byte ^ 48 is below ten for the digits alone.
        let digit = bytes[at]! ^ DIGIT_0;
        while (digit < 10) {
          whole = (Math.imul(whole, 10) + digit) | 0;
          digit = bytes[++at]! ^ DIGIT_0;
        }
        const wholeDigits = at - begin;
        let value = whole;
        let places = 0;
        if (digit === (decimal ^ DIGIT_0)) {
          begin = ++at;
          let part = 0;
          if (at <= lastWord) {
            const four = fourDigits(view.getInt32(at, true));
            if (four >= 0) {
              part = four;
              at += WORD;
            }
          }
          digit = bytes[at]! ^ DIGIT_0;
          while (digit < 10) {
            part = (Math.imul(part, 10) + digit) | 0;
            digit = bytes[++at]! ^ DIGIT_0;
          }
          places = at - begin;
          if (places <= INTEGER_DIGITS) value = (whole * POWERS[places]! + part) / POWERS[places]!;
        }
        if (
          digit === ((column < width - 1 ? separatorByte : LF) ^ DIGIT_0) &&
          wholeDigits <= INTEGER_DIGITS &&
          places <= INTEGER_DIGITS &&
          wholeDigits + places <= MOST_DIGITS &&
          wholeDigits + places > 0
        ) {
          block[place] = negative ? -value : value;
          numbers++;
          if (column < width - 1) at++;
          continue;
        }
      }
      at = this.oddCell(cell, column, place, numbers);
      if (at < 0) return 0;
      if (this.oddIsNumber) numbers++;
      const ended = bytes[at] === LF;
      if (ended !== (column === width - 1)) return 0;
      if (!ended && !blanks) at++;
    }
    if (this.texts > 0 && !this.isPlain(from, at, from)) return 0;
    this.put(this.texts);
    return at + 1;
  }

  /**
   * Reads a cell of any kind into its place of the block, or notes it as a text; where it ends, or -1 where its line
   * is no row.
   * @param numbers how many of the cells before it are numbers
   */
  private oddCell(cell: number, column: number, place: number, numbers: number): number {
    const { bytes, blanks, separatorByte, decimal, block } = this;
    this.oddIsNumber = false;
    let at = cell;
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
    if (ended && sound && at - cell <= LONGEST_NUMBER) {
      this.oddIsNumber = true;
      if (digits <= MOST_DIGITS && scale <= MOST_SCALE && scale >= -MOST_SCALE) {
        const value = scale > 0 ? mantissa / POWERS[scale]! : mantissa * POWERS[-scale]!;
        block[place] = negative ? -value : value;
      } else {
        this.noteText(this.texts++, column, begin, stop);
      }
    } else if (ended && stop === begin && !blanks) {
      block[place] = Number.NaN;
    } else {
      // A comment, a rule or a repeated header is told by its first cell.
      if (numbers === 0 || blanks) return -1;
      while (c !== LF && c !== separatorByte) c = bytes[++at]!;
      this.noteText(this.texts++, column, cell, at);
    }
    return at;
  }

  private noteText(k: number, column: number, from: number, to: number): void {
    this.textColumn[k] = column;
    this.textFrom[k] = from;
    this.textTo[k] = to;
  }

  /** Ends a row whose numbers stand in the block; so many of its cells are texts. */
  private put(texts: number): void {
    if (texts === 0) {
      if (++this.waiting === BLOCK_ROWS) this.handOn();
      return;
    }
    const { collector, width, waiting, block } = this;
    this.handOn();
    const { builders, rows } = collector;
    let k = 0;
    for (let column = 0; column < width; column++) {
      if (k < texts && this.textColumn[k] === column) {
        const cell = this.bytes.subarray(this.textFrom[k]!, this.textTo[k]!);
        builders[column]!.putText(rows, asciiText(cell));
        k++;
      } else builders[column]!.putNumber(rows, block[column * BLOCK_STRIDE + waiting]!);
    }
    collector.rowsDone(1, width);
  }

  /** Hands the rows that wait to the collector. */
  private handOn(): void {
    const { collector, width, waiting, block } = this;
    if (waiting === 0) return;
    this.waiting = 0;
    for (let column = 0; column < width; column++) {
      const from = column * BLOCK_STRIDE;
      collector.builders[column]!.putNumbers(collector.rows, block, from, from + waiting);
    }
    collector.rowsDone(waiting, width);
  }

  /** Hands a line of any kind to the collector as the tokeniser would; false where it is not plain. */
  private otherLine(from: number, end: number): boolean {
    if (!this.isPlain(from, end, this.asciiFrom)) return false;
    this.handOn();
    const line = letters.decode(this.bytes.subarray(from, end));
    this.collector.take(this.blanks ? blankCells(line) : line.split(this.separator));
    return true;
  }

  /** Whether bytes hold no quote, NUL or CR, and nothing but ASCII from a byte on. */
  private isPlain(from: number, to: number, asciiFrom: number): boolean {
    for (let i = from; i < to; i++) {
      const c = this.bytes[i]!;
      if (c === QUOTE || c === NUL || c === CR || (c > 127 && i >= asciiFrom)) return false;
    }
    return true;
  }
}

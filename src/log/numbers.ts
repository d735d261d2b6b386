/** How numbers are written in a file: which sign parts the decimals, which (if any) groups thousands. */
export interface NumberStyle {
  readonly decimal: '.' | ',';
  /** Empty when thousands are not marked. */
  readonly group: '' | '.' | ',' | ' ' | "'" | '_';
}

const plainStyle: NumberStyle = { decimal: '.', group: '' };

/** Written signs for “no value here”: missing, not unreadable. */
const missingMarks = new Set([
  '',
  '-',
  '--',
  '---',
  '?',
  '*',
  '.',
  'nan',
  '-nan',
  'nan(ind)',
  '-nan(ind)',
  '#n/a',
  '#na',
  'n/a',
  'na',
  'nil',
  'null',
  'none',
  'undefined',
  'inf',
  '+inf',
  '-inf',
  'infinity',
  '-infinity',
  '#value!',
  '#div/0!',
  'missing',
]);

/** True for a cell that says in words that it has no value. */
export function isMissingMark(cell: string): boolean {
  return cell.length < 11 && missingMarks.has(cell.trim().toLowerCase());
}

const DIGIT_0 = 48;
const DIGIT_9 = 57;

/** A number as most programs write it: optional sign, digits, point, exponent. NaN for anything else. */
function plainNumber(cell: string): number {
  const value = +cell;
  // 1e999 is no number that a log could hold; "" and blanks would count as 0; 0x10 is a label, not a value.
  if (!Number.isFinite(value)) return Number.NaN;
  const length = cell.length;
  if (length === 0) return Number.NaN;
  const last = cell.charCodeAt(length - 1);
  if ((last >= DIGIT_0 && last <= DIGIT_9) || last === 46) {
    if (length > 2 && cell.charCodeAt(0) === DIGIT_0) {
      const second = cell.charCodeAt(1) | 32;
      if (second === 120 || second === 98 || second === 111) return Number.NaN;
    }
    return value;
  }
  return cell.trim() === '' || /[a-z]/iu.test(cell) ? Number.NaN : value;
}

const fortranExponent = /^([+-]?[\d.]+)[dD]([+-]?\d+)$/u;

/**
 * The number that a cell holds in the given style; NaN where it holds none. Typographic minus signs, a leading
 * plus, blanks around it and Fortran exponents (`1.5D+03`) are read.
 */
export function readNumber(cell: string, style: NumberStyle = plainStyle): number {
  const first = style.decimal === '.' ? plainNumber(cell) : Number.NaN;
  if (!Number.isNaN(first)) return first;
  if (cell.length === 0 || cell.length > 64) return Number.NaN;
  let text = cell.trim().replace(/[−–‒﹣-]/u, '-');
  if (text === '' || !/\d/u.test(text)) return Number.NaN;
  if (style.group !== '') text = ungrouped(text, style.group);
  if (style.decimal === ',') {
    if (text.includes('.')) return Number.NaN;
    text = text.replace(',', '.');
  }
  const fortran = fortranExponent.exec(text);
  return plainNumber(fortran === null ? text : `${fortran[1]}e${fortran[2]}`);
}

/** Takes thousands marks out where they stand between groups of three digits; else leaves the text alone. */
function ungrouped(text: string, group: NumberStyle['group']): string {
  const blanks = group === ' ' ? text.replace(/[\u00a0\u2009\u202f]/gu, ' ') : text;
  const parts = blanks.split(group);
  if (parts.length < 2) return blanks;
  const head = parts[0] ?? '';
  const tail = parts.slice(1);
  const whole = /^[+-]?\d{1,3}$/u.test(head);
  const threes = tail.every((part, i) => (i < tail.length - 1 ? /^\d{3}$/u : /^\d{3}(?!\d)/u).test(part));
  return whole && threes ? parts.join('') : text;
}

const digitsWithMarks = /^[+-]?\d[\d.,'\u00a0\u2009\u202f _]*(?:e[+-]?\d+)?$/iu;

/**
 * The style in which the cells of a file are written, from what can only be read one way: a cell with two kinds
 * of marks has its decimals behind the last; a mark that does not stand before exactly three digits, or behind a
 * leading zero, parts decimals; a mark that comes twice groups.
 */
export function guessNumberStyle(cells: Iterable<string>): NumberStyle {
  const points = new MarkTally('.');
  const commas = new MarkTally(',');
  const others = new Map<NumberStyle['group'], number>();
  let pointLast = 0;
  let commaLast = 0;
  for (const raw of cells) {
    const cell = raw.trim();
    if (!digitsWithMarks.test(cell)) continue;
    const mantissa = cell.replace(/e[+-]?\d+$/iu, '');
    const point = mantissa.lastIndexOf('.');
    const comma = mantissa.lastIndexOf(',');
    if (point >= 0 && comma >= 0) {
      if (point > comma) pointLast++;
      else commaLast++;
    }
    points.see(mantissa);
    commas.see(mantissa);
    const marked = /^[+-]?\d{1,3}(?:([ '_\u00a0\u2009\u202f])\d{3})+(?:[.,]\d*)?$/u.exec(mantissa);
    if (marked !== null) {
      const sign = /['_]/u.test(marked[1] ?? '') ? (marked[1] as "'" | '_') : ' ';
      others.set(sign, (others.get(sign) ?? 0) + 1);
    }
  }
  const group = [...others].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '';
  if (pointLast > commaLast) return { decimal: '.', group: ',' };
  if (commaLast > 0) return { decimal: ',', group: '.' };
  if (commas.seen === 0) {
    // A point that comes twice in a number can only group.
    return points.twice > 0 && points.decimal === 0 ? { decimal: ',', group: '.' } : { decimal: '.', group };
  }
  if (commas.twice > 0 || (commas.decimal === 0 && commas.groupedAmongSmall))
    return { decimal: '.', group: ',' };
  if (points.decimal > commas.decimal) return { decimal: '.', group: commas.decimal === 0 ? ',' : group };
  return { decimal: ',', group: points.seen > 0 && points.decimal === 0 ? '.' : group };
}

/** Counts how a mark is used. */
class MarkTally {
  seen = 0;
  /** Uses that can only be decimal. */
  decimal = 0;
  /** Numbers with the mark more than once. */
  twice = 0;
  private unmarkedLarge = 0;
  private unmarked = 0;
  private readonly mark: string;

  constructor(mark: string) {
    this.mark = mark;
  }

  see(mantissa: string): void {
    const at = mantissa.indexOf(this.mark);
    if (at < 0) {
      this.unmarked++;
      if (/^[+-]?\d{4,}/u.test(mantissa)) this.unmarkedLarge++;
      return;
    }
    this.seen++;
    const second = mantissa.indexOf(this.mark, at + 1);
    if (second >= 0) {
      this.twice++;
      return;
    }
    const behind = mantissa.slice(at + 1).replace(/[.,].*$/u, '');
    const before = mantissa.slice(0, at).replace(/^[+-]/u, '');
    if (behind.length !== 3 || before.length > 3 || before === '' || /^0/u.test(before)) this.decimal++;
  }

  /** Marks only before three digits, no unmarked number of 1000 or more, and some unmarked below. */
  get groupedAmongSmall(): boolean {
    return this.unmarkedLarge === 0 && this.unmarked > 0;
  }
}

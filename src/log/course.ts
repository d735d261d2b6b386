/** Rows looked at together. */
export const BLOCK = 20;

/** Marks of a block: none of its changes is a fall, none is a rise, one is none at all, one is large. */
const NO_FALL = 1;
const NO_RISE = 2;
const HOLDS = 4;
const LARGE = 8;

/**
 * A block's changes that are below this share of the value before it leave each value of the block above a ninth of
 * that one, so that no two neighbours of the block differ by two fifths of either.
 */
const SMALL = 0.4 / 9;

/** The block of the change that leads to a row behind the first. */
export function blockOf(row: number): number {
  return Math.floor((row - 1) / BLOCK);
}

/** The last row to which a change of the same block leads. */
export function lastOfBlock(row: number): number {
  return (blockOf(row) + 1) * BLOCK;
}

/**
 * How a column goes from row to row, found in one pass: what there is to be repaired in a long log is mostly ruled
 * out by this, block of changes by block.
 */
export class Course {
  /** Whether each value is a finite number; where one is not, nothing else is known. */
  readonly whole: boolean;
  /** Largest rise and deepest fall (negative) between neighbours; infinite where there are none. */
  readonly largestRise: number;
  readonly deepestFall: number;
  /** Most rows in a run of one value. */
  readonly longestHold: number;
  /** Whether each value is above the one before it. */
  readonly rises: boolean;
  private readonly marks: Uint8Array;

  constructor(values: Float64Array) {
    const n = values.length;
    const marks = new Uint8Array(n < 2 ? 0 : blockOf(n - 1) + 1);
    let before = values[0] ?? Number.NaN;
    let whole = Number.isFinite(before);
    let rises = true;
    let [largest, deepest] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    let hold = 1;
    let longest = 1;
    for (let block = 0; block < marks.length && whole; block++) {
      const first = 1 + block * BLOCK;
      const end = Math.min(first + BLOCK, n);
      const start = Math.abs(before);
      let high = Number.NEGATIVE_INFINITY;
      let low = Number.POSITIVE_INFINITY;
      let sum = 0;
      let holds = 0;
      for (let i = first; i < end; i++) {
        const x = values[i]!;
        const change = x - before;
        sum += change;
        if (change > high) high = change;
        if (change < low) low = change;
        if (change === 0) {
          holds = HOLDS;
          if (++hold > longest) longest = hold;
        } else hold = 1;
        before = x;
      }
      // Of anything that is no finite number the sum is none either.
      whole = Number.isFinite(sum);
      if (low <= 0) rises = false;
      if (high > largest) largest = high;
      if (low < deepest) deepest = low;
      const large = high < SMALL * start && -low < SMALL * start ? 0 : LARGE;
      marks[block] = holds | large | (low >= 0 ? NO_FALL : 0) | (high <= 0 ? NO_RISE : 0);
    }
    this.whole = whole;
    this.largestRise = largest;
    this.deepestFall = deepest;
    this.longestHold = longest;
    this.rises = whole && rises;
    this.marks = marks;
  }

  /** Whether the values never turn within a block and the next. */
  goesOneWay(block: number): boolean {
    const here = this.marks[block] ?? 0;
    const next = this.marks[block + 1] ?? here;
    return (here & next & (NO_FALL | NO_RISE)) !== 0;
  }

  /** Whether any two neighbours of a block are equal. */
  holdsIn(block: number): boolean {
    return ((this.marks[block] ?? HOLDS) & HOLDS) !== 0;
  }

  /** Whether neighbours of a block may differ by two fifths of either or more. */
  mayLeapIn(block: number): boolean {
    return ((this.marks[block] ?? LARGE) & LARGE) !== 0;
  }

  /** Whether neighbours anywhere may differ by two fifths of either or more. */
  get mayLeap(): boolean {
    return this.marks.some((mark) => (mark & LARGE) !== 0);
  }
}

const known = new WeakMap<Float64Array, Course>();

/** The course of a column, found once: a column is asked often and never changed. */
export function courseOf(values: Float64Array): Course {
  let course = known.get(values);
  if (course === undefined) {
    course = new Course(values);
    known.set(values, course);
  }
  return course;
}

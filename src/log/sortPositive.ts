/** Values of a digit: a double is four digits of sixteen bits. */
const DIGIT_VALUES = 1 << 16;
const DIGITS = 4;
/** Fewer values are sorted faster by comparing them. */
const WORTH_COUNTING = 4096;

/** Places of a double's digits, the lowest first, on this machine. */
const places = new Uint16Array(Float64Array.of(1).buffer)[0] === 0 ? [0, 1, 2, 3] : [3, 2, 1, 0];

/**
 * Sorts positive numbers, rising, in place. Their bits rise as they do (IEEE 754-2019 §5.10, total order), so they
 * are dealt out digit by digit (radix sort, D. E. Knuth, “The Art of Computer Programming” 3, §5.2.5).
 */
export function sortPositive(values: Float64Array): Float64Array {
  if (values.length < WORTH_COUNTING) return values.sort();
  const starts = new Int32Array(DIGIT_VALUES);
  let from = values;
  let to: Float64Array = new Float64Array(values.length);
  for (const place of places) {
    const digits = new Uint16Array(from.buffer, from.byteOffset, from.length * DIGITS);
    starts.fill(0);
    for (let i = place; i < digits.length; i += DIGITS) starts[digits[i]!]!++;
    let start = 0;
    for (let digit = 0; digit < DIGIT_VALUES; digit++) {
      const count = starts[digit]!;
      starts[digit] = start;
      start += count;
    }
    for (let i = 0; i < from.length; i++) to[starts[digits[i * DIGITS + place]!]!++] = from[i]!;
    [from, to] = [to, from];
  }
  return values;
}

/** Bytes that are looked at together. */
export const WORD = 4;

const FOUR_ZEROS = 0x30303030;
const FOUR_SIXES = 0x06060606;
const HIGH_HALVES = 0xf0f0f0f0;
const PAIRS = 0x00ff00ff;
const LOW_HALF = 0xffff;

/** The number that four bytes write, the first of them lowest in the word; negative where not all are digits. */
export function fourDigits(word: number): number {
  const digits = word ^ FOUR_ZEROS;
  // None is above nine: its high half stays empty, with six added too.
  if (((digits | (digits + FOUR_SIXES)) & HIGH_HALVES) !== 0) return -1;
  const pairs = (Math.imul(digits, 10) + (digits >>> 8)) & PAIRS;
  return (Math.imul(pairs, 100) + (pairs >>> 16)) & LOW_HALF;
}

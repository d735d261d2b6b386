/** Digits that people round to. */
const DIGITS = [5, 2, 1] as const;
/** Values looked at, spread over the channel. */
const MOST = 2000;

/**
 * The largest step of 1, 2 or 5 times a power of ten that all values are whole multiples of: to which a channel was
 * rounded even where it moves too fast for its rounding to show as a staircase. 0 where there is none, in the
 * channel's unit after reading (`factor` is SI per written unit; the step is sought in the written one).
 */
export function printedStep(values: Float64Array, factor = 1): number {
  const stride = Math.max(1, Math.floor(values.length / MOST));
  const looked: number[] = [];
  for (let i = 0; i < values.length; i += stride) {
    const x = values[i]! / factor;
    if (Number.isFinite(x) && x !== 0) looked.push(x);
  }
  if (looked.length < 8) return 0;
  let largest = 0;
  for (const x of looked) largest = Math.max(largest, Math.abs(x));
  const top = Math.floor(Math.log10(largest)) - 1;
  for (let power = top; power >= top - 7; power--) {
    for (const digit of DIGITS) {
      const step = digit * 10 ** power;
      if (looked.every((x) => Math.abs(x / step - Math.round(x / step)) < 1e-6 * Math.max(1, x / step / 1e6)))
        return step * factor;
    }
  }
  return 0;
}

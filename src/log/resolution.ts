import { sortPositive } from './sortPositive.ts';
import { StepSums } from './stepSums.ts';

/** Relative difference up to which two numbers are the same number written twice. */
const EQUAL = 1e-9;

const STRETCHES = 20;
const STRETCH_SAMPLES = 1000;

/** Most multiples of the step that a change may have and still tell something about it. */
export const MOST_STEPS = 25;

/** Changes that are enough to tell a step. */
export const FEWEST = 8;

/** Random changes would miss the nearest multiple by 0.289 steps (uniform over one step). */
export const MOST_MISS = 0.06;

/** Share of the changes that must be few steps. */
export const LEAST_SHARE = 0.3;

/**
 * The step to which a channel was rounded, in its own unit; null where none can be seen. Seen means that
 * neighbouring samples often are equal or few steps apart, so that rounding shapes the curve. Where the step
 * changes along the channel (tenths, then whole kilometres) the finest is returned.
 */
export function roundingStep(values: Float64Array): number | null {
  const sample = stretchesOf(values);
  const changes = new Float64Array(sample.length);
  let count = 0;
  let before = Number.NaN;
  for (let i = 0; i < sample.length; i++) {
    const x = sample[i]!;
    if (Number.isNaN(x)) continue;
    if (!Number.isNaN(before)) {
      const d = Math.abs(x - before);
      // Changes far below the last digit of the value are the arithmetic of the writer.
      if (d > EQUAL * Math.max(Math.abs(x), Math.abs(before))) changes[count++] = d;
    }
    before = x;
  }
  if (count < FEWEST) return null;
  const sorted = sortPositive(changes.subarray(0, count));
  const sums = new StepSums(sorted);
  for (const p of [0.02, 0.05, 0.1, 0.25, 0.5]) {
    const guess = sorted[Math.floor(p * (sorted.length - 1))] ?? 0;
    // A step that never comes alone shows in changes of two and three steps.
    const step =
      refine(sorted, sums, guess) ?? refine(sorted, sums, guess / 2) ?? refine(sorted, sums, guess / 3);
    if (step === null) continue;
    return shapes(sample, step) ? step : null;
  }
  return null;
}

/** Of a long channel twenty stretches, one behind the other, which tell a step as well; any other as it is. */
function stretchesOf(values: Float64Array): Float64Array {
  if (values.length <= STRETCHES * STRETCH_SAMPLES) return values;
  const out = new Float64Array(STRETCHES * STRETCH_SAMPLES);
  for (let k = 0; k < STRETCHES; k++) {
    const from = Math.floor((k * values.length) / STRETCHES);
    out.set(values.subarray(from, from + STRETCH_SAMPLES), k * STRETCH_SAMPLES);
  }
  return out;
}

/** Least-squares step through changes taken as whole multiples of it; null where they are no multiples. */
function refine(sorted: Float64Array, sums: StepSums, guess: number): number | null {
  if (!(guess > 0)) return null;
  const known = sums.refined(guess);
  if (known !== undefined) return known;
  let step = guess;
  for (let round = 0; round < 3; round++) {
    let above = 0;
    let below = 0;
    let count = 0;
    for (; count < sorted.length; count++) {
      const d = sorted[count]!;
      const n = Math.round(d / step);
      if (n > MOST_STEPS) break;
      above += n * d;
      below += n * n;
    }
    if (count < FEWEST || below === 0) return null;
    step = above / below;
  }
  let off = 0;
  let most = 0;
  let count = 0;
  for (; count < sorted.length; count++) {
    const steps = sorted[count]! / step;
    const n = Math.round(steps);
    if (n > MOST_STEPS) break;
    off += (steps - n) * (steps - n);
    most = n;
  }
  if (count < FEWEST || most === 0) return null;
  return Math.sqrt(off / count) < MOST_MISS && count > LEAST_SHARE * sorted.length ? step : null;
}

/**
 * Whether rounding shows: values hold for a sample or more and step again, or neighbouring changes are different
 * numbers of steps. A steady rate (propellant at full flow) has equal changes too, but neither of these, and a
 * channel that moves by many steps at every sample is not shaped by its rounding.
 */
function shapes(values: Float64Array, step: number): boolean {
  let holds = 0;
  let uneven = 0;
  let changes = 0;
  let far = 0;
  let held = false;
  let before = Number.NaN;
  let lastCount = 0;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (Number.isNaN(x)) continue;
    if (!Number.isNaN(before)) {
      const count = Math.round(Math.abs(x - before) / step);
      if (count === 0) held = true;
      else {
        changes++;
        if (held && changes > 1) holds++;
        else if (lastCount !== 0 && count !== lastCount) uneven++;
        if (count > 10) far++;
        held = false;
        lastCount = count;
      }
    }
    before = x;
  }
  return changes > 0 && far < 0.3 * changes && (holds > 0.1 * changes || uneven > 0.1 * changes);
}

/** Steps a reader counts in: 1, 2, 5 times a power of ten; for seconds also parts of a minute and an hour. */
const decimalSteps = [1, 2, 5, 10];
const secondSteps = [
  0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 180, 240, 300, 600, 1200, 1800, 3600, 7200, 14400, 43200,
  86400,
];

function multiples(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step + 0);
}

/** Round values from `low` to `high`, about `count` of them and not more than one above that. */
export function ticks(low: number, high: number, count: number): number[] {
  const rough = (high - low) / count;
  if (!(rough > 0) || !Number.isFinite(rough)) return [];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (decimalSteps.find((s) => s * power >= rough * 0.999) ?? 10);
  return multiples(low, high, step);
}

/** The same for seconds: whole minutes where a minute is the size. */
export function timeTicks(low_s: number, high_s: number, count: number): number[] {
  const rough = (high_s - low_s) / count;
  if (!(rough > 0) || !Number.isFinite(rough)) return [];
  const step = secondSteps.find((s) => s >= rough * 0.999);
  return step === undefined ? ticks(low_s, high_s, count) : multiples(low_s, high_s, step);
}

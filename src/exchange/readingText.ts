import { numberText } from './figureText.ts';

/** A reading off a curve: whole numbers, one decimal below 10. */
export function readingText(value: number): string {
  return numberText(value, Math.abs(value) < 9.95 && value !== 0 ? 1 : 0);
}

/** Seconds from lift-off: `123 s`. */
export function timeText(time_s: number): string {
  return `${numberText(time_s, 0)} s`;
}

/** A round value under an axis: decimals only where the step needs them. */
export function tickText(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return numberText(
    rounded,
    Number.isInteger(rounded) ? 0 : Math.min(3, String(rounded).split('.')[1]?.length ?? 1),
  );
}

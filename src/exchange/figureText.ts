import type { Figure } from '../review/types.ts';
import { formatFigure, NO_FIGURE } from '../units/figures.ts';

/** How a figure is shown: SI value × scale, with so many decimals. */
export interface Shown {
  readonly scale: number;
  readonly decimals: number;
}

/** A number with so many decimals; a dash for none. */
export function numberText(value: number | null, decimals: number): string {
  return value === null ? NO_FIGURE : formatFigure(value, { decimals });
}

/** Decimals that a figure deserves: none where it is uncertain by one or more, or is exactly zero; else one. */
export function shown(figure: Figure, scale = 1): Shown {
  const { value, low, high } = figure;
  const half = low === null || high === null ? 0 : ((high - low) / 2) * scale;
  return { scale, decimals: value === null || value === 0 || half >= 0.95 ? 0 : 1 };
}

/** How a mass in kg is shown: whole, with decimals only where little would be left of a small rocket's. */
export function massForm({ value }: Figure): Shown {
  const size = Math.abs(value ?? 0);
  return { scale: 1, decimals: size === 0 || size >= 10 ? 0 : size >= 1 ? 1 : 4 };
}

/** The figure's value, or — where it is unavailable. */
export function valueText(figure: Figure, { scale, decimals }: Shown): string {
  return numberText(figure.value === null ? null : figure.value * scale, decimals);
}

/** The 95 % interval: ±half where it is even about the value (to a quarter of its width), low…high where not. */
export function intervalText(figure: Figure, { scale, decimals }: Shown): string {
  const { value, low, high } = figure;
  if (value === null || low === null || high === null) return '';
  const half = ((high - low) / 2) * scale;
  const step = 10 ** -decimals;
  if (half === 0) return '±0';
  if (half < step / 2) return `±<${step.toFixed(decimals)}`;
  if (Math.abs((high + low) / 2 - value) * scale > half / 4) {
    return `${numberText(low * scale, decimals)}…${numberText(high * scale, decimals)}`;
  }
  return `±${numberText(half, decimals)}`;
}

/**
 * How far each assumption could move the figure, as "heading unseen" and "−10 … +0"; without those that move it by
 * less than is shown.
 */
export function assumptionMoves(
  figure: Figure,
  { scale, decimals }: Shown,
): readonly { readonly what: string; readonly range: string }[] {
  const { value, assumptions = [] } = figure;
  if (value === null) return [];
  const signed = (reached: number) => {
    const text = formatFigure((reached - value) * scale, { decimals, signed: true });
    return /[1-9]/u.test(text) ? text : '+0';
  };
  return assumptions
    .map(({ what, low, high }) => ({ what, ends: [signed(low), signed(high)] }))
    .filter(({ ends }) => ends.some((end) => end !== '+0'))
    .map(({ what, ends }) => ({ what, range: ends.join(' … ') }));
}

/** The same as one text each: "heading unseen: −10 … +0". */
export function assumptionTexts(figure: Figure, form: Shown): string[] {
  return assumptionMoves(figure, form).map(({ what, range }) => `${what}: ${range}`);
}

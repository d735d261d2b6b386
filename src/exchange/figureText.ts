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

/** What assumptions could move, each as "heading unseen: −10 … +0". */
export function assumptionTexts(figure: Figure, { scale, decimals }: Shown): string[] {
  const signed = (v: number) => `${v > 0 || Object.is(v, 0) ? '+' : ''}${numberText(v * scale, decimals)}`;
  return (figure.assumptions ?? []).map((a) => `${a.what}: ${signed(a.low)} … ${signed(a.high)}`);
}

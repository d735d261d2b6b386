import type { Target } from '../mission/types.ts';
import { formatFigure } from '../units/figures.ts';

/** A number with a fixed count of decimals, thousands separated, true minus. */
export function decimal(value: number, decimals: number): string {
  return formatFigure(value, { decimals });
}

/** An altitude for a sentence: km, without decimals from 100 km; `unit` false leaves the unit to a neighbour. */
export function formatKm(altitude_m: number, unit = true): string {
  const km = altitude_m / 1000;
  const text = decimal(km, Math.abs(km) < 10 ? 1 : 0);
  return unit ? `${text} km` : text;
}

/** A single height for a sentence: as `formatKm`, but in m where less than a kilometre would lose its digits. */
export function formatHeight(altitude_m: number): string {
  const whole = decimal(altitude_m, 0);
  return Math.abs(altitude_m) < 1000 && whole !== '0' ? `${whole} m` : formatKm(altitude_m);
}

/** What the flight was to come to, in the middle of a sentence. */
export function goalWord({ kind }: Target): string {
  if (kind === 'orbit') return 'orbit';
  return kind === 'escape' ? 'escape' : kind === 'suborbital' ? 'the height wanted' : 'the target';
}

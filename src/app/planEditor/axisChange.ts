import type { PlanAxis } from '../../plan/types.ts';
import type { Analysis } from '../../review/types.ts';
import { flownControls, valueOn } from './flownControls.ts';
import { type PlanSheet, tidy } from './planSheet.ts';

/** Digits after the point that a moved row keeps: tenths of a second, whole metres, tenths of a metre per second. */
const decimals = { time: 1, altitude: 0, speed: 1 } as const;

/**
 * The sheet along another axis. Rows keep their controls and move to where the flight was at the same moment; what
 * it did not reach, and every row where there is no flight, is left to be filled in.
 */
export function onAxis(sheet: PlanSheet, axis: PlanAxis, flight: Analysis | null): PlanSheet {
  if (axis === sheet.axis) return sheet;
  const from = flight === null ? null : flownControls(flight, sheet.axis);
  const to = flight === null ? null : flownControls(flight, axis);
  const moved = (at: number): number | null => {
    if (from === null || to === null) return null;
    const time = valueOn(from.at, from.time_s, at);
    const place = time === null ? null : valueOn(to.time_s, to.at, time);
    return place === null ? null : tidy(Number(place.toFixed(decimals[axis])));
  };
  return {
    ...sheet,
    axis,
    rows: sheet.rows.map((r) => ({ ...r, at: typeof r.at === 'number' ? moved(r.at) : null })),
  };
}

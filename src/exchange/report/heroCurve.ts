import type { CurveBand, Figure, Review } from '../../review/types.ts';
import { readingText, timeText } from '../readingText.ts';
import { valueAt } from '../sampleAt.ts';

type Values = readonly (number | null)[];

/** The curve that the page leads with. */
export interface HeroCurve {
  readonly kind: 'margin' | 'to-go';
  readonly title: string;
  readonly note: string;
  readonly time_s: readonly number[];
  readonly values: Values;
  /** End of the ascent, s: the moment whose value is told. */
  readonly told_s: number | null;
  /** 95 % interval of the told value; null where there is none. */
  readonly told: { readonly low: number; readonly high: number } | null;
  /** 95 % interval along the curve; null where the review has none. */
  readonly band: CurveBand | null;
  /** What goes out of reach where the margin falls through zero. */
  readonly goal: 'orbit' | 'target';
  /** Why it is not the margin, where it is not. */
  readonly instead: string | null;
}

const isKnown = (v: number | null) => v !== null;

function intervalOf({ low, high }: Figure): HeroCurve['told'] {
  return low === null || high === null ? null : { low, high };
}

/** The margin where there is one, else delta-v to go, else null. */
export function heroCurve({ budget, orbit, mission }: Review): HeroCurve | null {
  const goal = mission.targetOrbit === null ? 'target' : 'orbit';
  const { time_s, margin, toGo } = budget.curves;
  if (margin.some(isKnown)) {
    return {
      kind: 'margin',
      title: 'Margin',
      note: 'm/s that could still be wasted and the target reached',
      time_s,
      values: margin,
      told_s: orbit.cutoff_s,
      told: intervalOf(budget.margin),
      band: budget.band?.margin ?? null,
      goal,
      instead: null,
    };
  }
  if (!toGo.some(isKnown)) return null;
  return {
    kind: 'to-go',
    title: 'Delta-v to go',
    note: 'm/s still needed for the target, if flown perfectly from here',
    time_s,
    values: toGo,
    told_s: orbit.cutoff_s,
    told: intervalOf(budget.deltaVToGo),
    band: budget.band?.toGo ?? null,
    goal,
    instead: `In place of the margin, which is not available: ${budget.margin.reason ?? 'what is aboard is not known'}.`,
  };
}

/** The first point that has a value, and the one that is told: at the ascent's end, else the last with a value. */
export interface CurveEnds {
  readonly first: { readonly time_s: number; readonly value: number };
  readonly last: { readonly time_s: number; readonly value: number };
}

/** The curve's ends; null without a value. */
export function curveEnds(curve: HeroCurve): CurveEnds | null {
  const known = curve.values.flatMap((value, i) => {
    const time_s = curve.time_s[i];
    return value === null || time_s === undefined ? [] : [{ time_s, value }];
  });
  const first = known[0];
  const told = curve.told_s === null ? null : valueAt(curve.time_s, curve.values, curve.told_s);
  const last =
    told === null || curve.told_s === null ? known[known.length - 1] : { time_s: curve.told_s, value: told };
  return first === undefined || last === undefined ? null : { first, last };
}

/** `at lift-off`, or the time where the curve starts later. */
export function momentText(time_s: number): string {
  return Math.abs(time_s) < 0.5 ? 'at lift-off' : `at ${timeText(time_s)}`;
}

/** The curve in a sentence, for those who do not see it. */
export function curveSentence(curve: HeroCurve, lostAt_s: number | null): string {
  const ends = curveEnds(curve);
  if (ends === null) return curve.title;
  return [
    `${curve.title} against time: ${readingText(ends.first.value)} m/s ${momentText(ends.first.time_s)}`,
    ...(curve.kind === 'margin' && lostAt_s !== null ? [`below zero from ${timeText(lostAt_s)}`] : []),
    `${readingText(ends.last.value)} m/s at ${timeText(ends.last.time_s)}`,
  ].join(', ');
}

/** Half the 95 % interval at a time, in the curve's unit; null where there is none. */
export function halfAt({ time_s, band }: HeroCurve, at_s: number): number | null {
  if (band === null) return null;
  const low = valueAt(time_s, band.low, at_s);
  const high = valueAt(time_s, band.high, at_s);
  return low === null || high === null ? null : (high - low) / 2;
}

/** How wide the shaded band is at both ends, in a clause; null without one. */
export function bandText(curve: HeroCurve): string | null {
  const ends = curveEnds(curve);
  if (ends === null) return null;
  const told = [
    [ends.first.time_s, momentText(ends.first.time_s)],
    [ends.last.time_s, momentText(ends.last.time_s)],
  ] as const;
  const halves = told.flatMap(([t, moment]) => {
    const half = halfAt(curve, t);
    return half === null ? [] : [`±${half < 0.05 ? '<0.1' : readingText(half)} m/s ${moment}`];
  });
  return halves.length === 0 ? null : `shaded: the 95 % interval, ${halves.join(', ')}`;
}

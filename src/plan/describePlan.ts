import { formatFigure } from '../units/figures.ts';
import type { Plan } from './types.ts';

const axisWords = {
  time: ['time', 's', 1],
  altitude: ['altitude', 'km', 1e-3],
  speed: ['speed', 'm/s', 1],
} as const;
const DEG = 180 / Math.PI;

/** What is understood of a plan and what it leaves open, one clause each. */
export function describePlan(plan: Plan): { readonly understood: string[]; readonly missing: string[] } {
  const { axisValues, pitch_rad, throttle, events } = plan;
  const [word, unit, scale] = axisWords[plan.axis];
  const figure = (value: number, decimals = 1): string => formatFigure(value, { decimals });
  const understood: string[] = [
    plan.form === 'flight'
      ? 'a full profile, or another flight: its controls are taken while its engines burn'
      : `a table of controls against ${word}`,
  ];
  if (axisValues.length > 0)
    understood.push(
      `${axisValues.length} rows, ${word} ${figure(axisValues[0]! * scale)} to ${figure(axisValues.at(-1)! * scale)} ${unit}`,
    );
  const range = (values: Float64Array): [number, number] =>
    values.reduce<[number, number]>((m, x) => [Math.min(m[0], x), Math.max(m[1], x)], [Infinity, -Infinity]);
  if (pitch_rad !== null) {
    const [low, high] = range(pitch_rad);
    understood.push(`pitch from ${figure(low * DEG)}° to ${figure(high * DEG)}° above the horizon`);
  }
  if (throttle !== null) {
    const [low, high] = range(throttle);
    understood.push(`throttle from ${figure(low * 100, 0)} to ${figure(high * 100, 0)} %`);
  }
  for (const e of events)
    understood.push(
      `${e.name}${e.subject === null ? '' : ` (${e.subject})`} at ${figure(e.at * scale)} ${unit}`,
    );
  const missing = [...plan.assumed];
  if (!events.some((e) => e.name === 'cutoff'))
    missing.push(
      'No cutoffs: stages burn until empty, the last one until its orbit has the target’s energy.',
    );
  return { understood, missing };
}

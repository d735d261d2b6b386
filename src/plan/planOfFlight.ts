import { findEvents } from '../flight/events.ts';
import type { Flight } from '../flight/types.ts';
import type { Plan, PlanEvent } from './types.ts';

/** Events that a flight hands on as a plan; the rest follow from flying it. */
const handedOn = ['ignition', 'cutoff', 'separation', 'throttle-down', 'throttle-up', 'pitch-over'];

/**
 * The controls and event times of a flight as a plan for others. Pitch and throttle are taken while engines
 * burn; a flight whose log has no pitch is taken to have thrust along its path, one without throttle in full.
 */
export function planOfFlight(flight: Flight): Plan {
  const { time, pitch, throttle, flightPathAngle, burns, log } = flight;
  const assumed: string[] = [];
  if (pitch === null) assumed.push('The plan has no pitch: it is flown with thrust along its path.');
  if (throttle === null) assumed.push('The plan has no throttle: it is flown at full thrust.');
  const axis: number[] = [];
  const angles: number[] = [];
  const settings: number[] = [];
  const angle = pitch ?? flightPathAngle;
  for (const burn of burns) {
    for (let i = burn.startIndex; i <= burn.endIndex; i++) {
      if (!Number.isFinite(angle[i]!)) continue;
      // The samples next to an edge may show the engine's other side.
      const k = Math.min(Math.max(i, burn.startIndex + 1), burn.endIndex - 1);
      const set = throttle?.[k] ?? 1;
      axis.push(time[i]!);
      angles.push(angle[i]!);
      settings.push(set > 0 ? set : (settings.at(-1) ?? 1));
    }
  }
  const events = findEvents(flight)
    .filter((e) => handedOn.includes(e.name))
    .map(({ name, subject, time_s }): PlanEvent => ({ name, subject, at: time_s }));
  return {
    name: log.source.name,
    form: 'flight',
    axis: 'time',
    axisValues: Float64Array.from(axis),
    pitch_rad: Float64Array.from(angles),
    throttle: Float64Array.from(settings),
    events,
    log,
    assumed,
  };
}

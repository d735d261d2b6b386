import { isPlanEvent, namedEvent } from './planEvents.ts';
import type { AscentPlan, Plan } from './types.ts';

/** A computed ascent as a plan against time; its events that plans do not have are left out. @param name under which it is told and saved */
export function planOfAscent(ascent: AscentPlan, name: string): Plan {
  return {
    name,
    form: 'table',
    axis: 'time',
    axisValues: Float64Array.from(ascent.rows, (r) => r.time_s),
    pitch_rad: Float64Array.from(ascent.rows, (r) => r.pitch_rad),
    throttle: Float64Array.from(ascent.rows, (r) => r.throttle),
    events: ascent.events
      .filter((e) => isPlanEvent(e.name))
      .map((e) => ({ ...namedEvent(e.name, { file: name }), at: e.time_s })),
    log: null,
    assumed: [],
  };
}

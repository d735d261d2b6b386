import type { Flight } from '../flight/types.ts';
import type { Program } from './controls.ts';
import { headingTable, timeTable } from './controls.ts';
import { flownThrottle } from './flownThrottle.ts';
import type { RocketStage } from './rocket.ts';

/** The three controls as the log shows them, from lift-off on. */
export interface FlownControls {
  readonly pitch: Program;
  readonly throttle: Program;
  readonly heading: Program;
}

/**
 * A flight's own controls: straight between the rows of the log, with steps at ignitions and cutoffs, where the
 * log has but a ramp from sample to sample; the throttle agrees with the mass line. A heading that nothing tells is
 * the launch azimuth. Null where the log has no pitch.
 * @param stages of the rocket that is to fly them
 */
export function flownControls(flight: Flight, stages: readonly RocketStage[]): FlownControls | null {
  if (flight.pitch === null) return null;
  const azimuth = flight.mission.site.launchAzimuth_rad;
  const heading = flight.track.heading.map((v) => (Number.isFinite(v) ? v : azimuth));
  return {
    pitch: stepped(flight, flight.pitch, timeTable),
    throttle: flownThrottle(flight, stages),
    heading: stepped(flight, heading, headingTable),
  };
}

/** A table of the log's rows and of both sides of each burn's edges. */
function stepped(
  flight: Flight,
  value: Float64Array,
  table: (time_s: number[], value: number[]) => Program,
): Program {
  const starts = new Set(flight.burns.filter((b) => !b.startsBeforeLog).map((b) => b.startIndex));
  const ends = new Set(flight.burns.filter((b) => !b.endsAfterLog).map((b) => b.endIndex));
  const times: number[] = [];
  const values: number[] = [];
  const put = (t: number, v: number | undefined) => {
    if (v === undefined || !Number.isFinite(v)) return;
    times.push(t);
    values.push(v);
  };
  for (let i = 0; i < value.length; i++) {
    const t = flight.time[i]!;
    if (starts.has(i)) put(t, value[i - 1]);
    if (starts.has(i) || ends.has(i) || flight.isRow[i] === 1) put(t, value[i]);
    if (ends.has(i)) put(t, value[i + 1]);
  }
  return table(times, values);
}

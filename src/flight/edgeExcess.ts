import type { Flight } from './types.ts';

/** How much larger than the flight's own one sigma the error of the altitude's rate is, inside a burn or a coast. */
const INSIDE = 1.2;
const STAIR_INSIDE = 1.5;
/** By how much a burn's edge enlarges it further, and over how many samples that dies off. */
const EXCESS = 1.4;
const STAIR_EXCESS = 5;
const EXCESS_SAMPLES = 7.5;
const STAIR_EXCESS_SAMPLES = 12.5;

/**
 * Factor on the vertical speed's one-sigma error at axis points: more beside an instant at which the acceleration
 * jumps, where the smoothing is loosened, than well inside a burn or a coast. As measured on the reference flights
 * through a hand pilot's instruments (5 Hz, altitude 5 m): 2.4 within 0.25 s, 1.3 at 2 s, 1.2 beyond; stairs of
 * 100 m, whose edges tell the height, 6.5 within 0.25 s, 3.8 at 2 s, 1.5 beyond 10 s. A logged vertical speed needs no
 * derivative and has no excess.
 */
export function edgeExcess(flight: Flight): (i: number) => number {
  const { log, time, burns, drops } = flight;
  if (log.channels.verticalSpeed !== undefined || time.length < 2) return () => 1;
  const step_s = (time[time.length - 1]! - time[0]!) / Math.max(1, log.time.length - 1);
  const stair = log.resolution.altitude !== undefined;
  const inside = stair ? STAIR_INSIDE : INSIDE;
  const most = stair ? STAIR_EXCESS : EXCESS;
  const fade_s = step_s * (stair ? STAIR_EXCESS_SAMPLES : EXCESS_SAMPLES);
  const edges = [...burns.flatMap((b) => [b.start_s, b.end_s]), ...drops.map((d) => d.time_s)];
  return (i) => {
    const nearest = edges.reduce(
      (d, edge) => Math.min(d, Math.abs(edge - time[i]!)),
      Number.POSITIVE_INFINITY,
    );
    return inside + most * Math.exp(-nearest / fade_s);
  };
}

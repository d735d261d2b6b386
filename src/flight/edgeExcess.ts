import type { Flight } from './types.ts';

/** By how much a burn's edge enlarges the error of the altitude's rate, and over how many samples that dies off. */
const EXCESS = 5.3;
const STAIR_EXCESS = 9;
const EXCESS_SAMPLES = 3;

/**
 * Factor on the vertical speed's one-sigma error at axis points: 1 well inside a burn or a coast, more beside an
 * instant at which the acceleration jumps, where the smoothing sees one side only. As measured on the reference
 * flights through a hand pilot's instruments (5 Hz, altitude 5 m): 5.4 within 0.25 s, 2.5 at 0.75 s, 1.3 at 1.5 s;
 * stairs of 100 m, whose edges tell the height, 7.2 and 6.2 within 0.5 s.
 * A logged vertical speed needs no derivative and has no excess.
 */
export function edgeExcess(flight: Flight): (i: number) => number {
  const { log, time, burns, drops } = flight;
  if (log.channels.verticalSpeed !== undefined || time.length < 2) return () => 1;
  const fade_s = (EXCESS_SAMPLES * (time[time.length - 1]! - time[0]!)) / Math.max(1, log.time.length - 1);
  const edges = [...burns.flatMap((b) => [b.start_s, b.end_s]), ...drops.map((d) => d.time_s)];
  const most = log.resolution.altitude === undefined ? EXCESS : STAIR_EXCESS;
  return (i) => {
    const nearest = edges.reduce(
      (d, edge) => Math.min(d, Math.abs(edge - time[i]!)),
      Number.POSITIVE_INFINITY,
    );
    return 1 + most * Math.exp(-nearest / fade_s);
  };
}

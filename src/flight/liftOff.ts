/** Time zero: first motion off the pad, or the log's first sample if it starts in flight (METHODS §1). */

export interface LiftOff {
  /** Log time of time zero. */
  readonly time_s: number;
  /** First row in motion. */
  readonly row: number;
  readonly startsInFlight: boolean;
}

/**
 * Finds first motion. `still_m_s` is the speed below which the channel cannot tell motion (its noise or step);
 * returns null when nothing in the log ever moves.
 */
export function findLiftOff(
  t: Float64Array,
  speed: Float64Array,
  altitude: Float64Array,
  still_m_s: number,
): LiftOff | null {
  const threshold = Math.max(0.3, 4 * still_m_s);
  const n = t.length;
  let first = -1;
  for (let i = 0; i < n; i++) {
    if (!(speed[i]! > threshold)) continue;
    // Motion counts when it lasts: the speed stays above for the next second of samples.
    let lasting = true;
    for (let j = i + 1; j < n && t[j]! - t[i]! < 1; j++) if (speed[j]! <= threshold) lasting = false;
    if (!lasting) continue;
    first = i;
    break;
  }
  if (first === -1) return null;
  if (speed[0]! > threshold && speed[0]! > 5)
    return { time_s: t[0]!, row: 0, startsInFlight: altitude[0]! > 100 || speed[0]! > 20 };
  if (first <= 1 && t[0]! >= t[first]! - 1e-9) return { time_s: t[0]!, row: 0, startsInFlight: false };
  const zero = backToRest(t, speed, first);
  // A log that begins at the moment of lift-off begins at time zero: its first sample already creeps, or the
  // line back to rest, which the growing acceleration bends a little, ends beside it.
  const beside = first === 1 && (speed[0]! > 0 || zero - t[0]! < 0.1 * (t[1]! - t[0]!));
  if (beside || zero <= t[0]! + 1e-9) return { time_s: t[0]!, row: 0, startsInFlight: false };
  return { time_s: zero, row: first, startsInFlight: false };
}

/** Runs the first seconds' speed back to zero: the line through the samples up to 2 s after first motion. */
function backToRest(t: Float64Array, speed: Float64Array, first: number): number {
  let n = 0;
  let st = 0;
  let sv = 0;
  let stt = 0;
  let stv = 0;
  for (let i = first; i < t.length && (t[i]! - t[first]! <= 2 || n < 3); i++) {
    if (!Number.isFinite(speed[i]!)) continue;
    const x = t[i]! - t[first]!;
    n++;
    st += x;
    sv += speed[i]!;
    stt += x * x;
    stv += x * speed[i]!;
  }
  const slope = (n * stv - st * sv) / (n * stt - st * st);
  if (!(slope > 0)) return t[first]!;
  const zero = t[first]! - (sv - slope * st) / n / slope;
  const before = first > 0 ? t[first - 1]! : t[first]!;
  return Math.min(t[first]!, Math.max(zero, before));
}

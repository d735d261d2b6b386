/** Time zero: first motion off the pad, or the log's first sample if it starts in flight (METHODS §1). */

export interface LiftOff {
  /** Log time of time zero. */
  readonly time_s: number;
  /** First row in motion. */
  readonly row: number;
  readonly startsInFlight: boolean;
  /** One-sigma error of the time, s; 0 where the log shows it sample by sample. */
  readonly sigma_s: number;
}

/**
 * Finds first motion. `still_m_s` is the speed below which the channel cannot tell motion (its noise or step),
 * `ignition_s` the time of the first row under thrust, null where nothing tells it; returns null when nothing in
 * the log ever moves.
 */
export function findLiftOff(
  t: Float64Array,
  speed: Float64Array,
  altitude: Float64Array,
  still_m_s: number,
  ignition_s: number | null = null,
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
    return { time_s: t[0]!, row: 0, startsInFlight: altitude[0]! > 100 || speed[0]! > 20, sigma_s: 0 };
  if (first <= 1 && t[0]! >= t[first]! - 1e-9)
    return { time_s: t[0]!, row: 0, startsInFlight: false, sigma_s: 0 };
  if (still_m_s > NOISY_M_S && altitude[0]! < 100) {
    const rest = noisyRest(t, speed, first, still_m_s);
    // Lift-off at the moment of ignition unless the speed channel says clearly that it came later.
    const lit = ignition_s !== null && Math.abs(rest.zero_s - ignition_s) < 3 * rest.sigma_s;
    const time_s = Math.max(t[0]!, lit ? ignition_s : rest.zero_s);
    let row = 0;
    while (row < first && t[row]! <= time_s) row++;
    return { time_s, row, startsInFlight: false, sigma_s: lit ? 0 : rest.sigma_s };
  }
  const zero = backToRest(t, speed, first, still_m_s);
  // A log that begins at the moment of lift-off begins at time zero: its first sample already creeps, or the
  // line back to rest, which the growing acceleration bends a little, ends beside it.
  const beside = first === 1 && (speed[0]! > 0 || zero - t[0]! < 0.1 * (t[1]! - t[0]!));
  if (beside || zero <= t[0]! + 1e-9) return { time_s: t[0]!, row: 0, startsInFlight: false, sigma_s: 0 };
  return { time_s: zero, row: first, startsInFlight: false, sigma_s: 0 };
}

/** Speed noise from which single samples no longer show the first motion. */
const NOISY_M_S = 0.1;
/** How long after first motion the noisy speed is taken to rise along a line. */
const RISE_S = 4;

/** The line through the first seconds' noisy speed, run back to zero, and the one-sigma error of that time. */
function noisyRest(
  t: Float64Array,
  speed: Float64Array,
  first: number,
  noise_m_s: number,
): { zero_s: number; sigma_s: number } {
  let zero = t[first]!;
  let sigma = RISE_S;
  for (let pass = 0; pass < 4; pass++) {
    const from = Math.max(t[0]!, zero);
    let n = 0;
    let st = 0;
    let sv = 0;
    let stt = 0;
    let stv = 0;
    for (let i = 0; i < t.length && (t[i]! <= from + RISE_S || n < 4); i++) {
      if (t[i]! < from || !Number.isFinite(speed[i]!)) continue;
      const x = t[i]! - from;
      n++;
      st += x;
      sv += speed[i]!;
      stt += x * x;
      stv += x * speed[i]!;
    }
    const spread = n * stt - st * st;
    const slope = (n * stv - st * sv) / spread;
    if (!(slope > 0)) break;
    const back = (sv - slope * st) / n / slope;
    zero = Math.min(t[first]!, from - back);
    const lever = st / n + back;
    sigma = (noise_m_s / slope) * Math.sqrt(1 / n + (n * lever * lever) / spread);
  }
  return { zero_s: zero, sigma_s: sigma };
}

/** A clean speed above this is motion, if slower than what motion is known by. */
const CREEPS_M_S = 0.005;

/** Runs the first seconds' speed back to zero: the line through the samples up to 2 s after first motion. */
function backToRest(t: Float64Array, speed: Float64Array, first: number, still_m_s: number): number {
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
  // Not before the last sample at rest: a dense log has samples that creep below the threshold.
  let rest = Math.max(0, first - 1);
  while (rest > 0 && speed[rest]! > Math.max(CREEPS_M_S, 2 * still_m_s)) rest--;
  return Math.min(t[first]!, Math.max(zero, t[rest]!));
}

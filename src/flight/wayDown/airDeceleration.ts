import { localPolynomial } from '../localPolynomial.ts';
import type { Flight } from '../types.ts';

/** Error of a deceleration that is good enough, m/s²: noisy logs are smoothed until they have it. */
const WANTED_M_S2 = 0.3;
/** Longest window, s: a longer one would flatten an entry's peak or a parachute's opening. */
const WIDEST_S = 8;

/** Long logs are fitted at so many points, and read straight between them. */
const MOST_FITS = 20_000;

/** What the air does to the speed along the way down. */
export interface AirDeceleration {
  /** First axis point that it was asked for. */
  readonly from: number;
  /** Drag over mass, m/s², on the flight's axis; NaN before `from`, under thrust and at rest. */
  readonly deceleration: Float64Array;
  /** Its one-sigma error from the noise of the speed, m/s². */
  readonly sigma_m_s2: number;
}

/**
 * Drag over mass of an unpowered descent from axis point `from` on, out of the path alone:
 * D/m = −d|v|/dt − (g − ω²r·cos²φ)·sin γ (METHODS §2 without thrust), the rate by local quadratic least squares.
 */
export function airDeceleration(flight: Flight, from: number): AirDeceleration {
  const { time, speed, verticalSpeed, radius, track, gaps, mission, noise } = flight;
  const n = time.length;
  const out = new Float64Array(n).fill(Number.NaN);
  const span = time[n - 1]! - time[from]!;
  const rate = span > 0 ? Math.max(0.05, (n - 1 - from) / span) : 1;
  // σ of the slope over a window w of N = rate·w samples: σ_v·√(12/N)/w.
  const wanted = (noise.speed_m_s * Math.sqrt(12 / rate)) / WANTED_M_S2;
  const window_s = Math.min(WIDEST_S, Math.max(4.01 / rate, wanted ** (2 / 3)));
  const t = time.subarray(from);
  const edges = flight.burns
    .flatMap((b) => [b.start_s, b.end_s])
    .filter((s) => s > t[0]! && s < t[t.length - 1]!)
    .map((time_s) => ({ time_s, side: 'after' as const }));
  const stride = Math.max(1, Math.floor(t.length / MOST_FITS));
  const query = stride === 1 ? t : t.filter((_, k) => k % stride === 0 || k === t.length - 1);
  const fit = localPolynomial(t, speed.subarray(from), query, {
    degree: 2,
    window_s: wanted ** (2 / 3) > 4.01 / rate ? window_s : 0,
    minPoints: 5,
    breaks: edges,
  });
  const spin = mission.world.spin_rad_s ** 2;
  let k = 0;
  const rateAt = (i: number): number => {
    while (k + 1 < query.length - 1 && query[k + 1]! <= time[i]!) k++;
    const [a, b] = [query[k]!, query[k + 1] ?? query[k]!];
    const share = b > a ? (time[i]! - a) / (b - a) : 0;
    return fit.rate[k]! + share * ((fit.rate[k + 1] ?? fit.rate[k]!) - fit.rate[k]!);
  };
  for (let i = from; i < n; i++) {
    const v = speed[i]!;
    const lit = (i < n - 1 && gaps.burn[i] !== -1) || (i > 0 && gaps.burn[i - 1] !== -1);
    if (lit || v < 1) continue;
    const r = radius[i]!;
    const rise = Math.max(-1, Math.min(1, verticalSpeed[i]! / v));
    const pull = mission.world.mu_m3_s2 / (r * r) - spin * r * Math.cos(track.latitude[i]!) ** 2;
    out[i] = -rateAt(i) - pull * rise;
  }
  const count = Math.max(5, rate * window_s);
  const sigma_m_s2 = (noise.speed_m_s * Math.sqrt(12 / count)) / Math.max(window_s, 4 / rate);
  return { from, deceleration: out, sigma_m_s2 };
}

import type { Mission } from '../mission/types.ts';
import { alongPath } from './alongPath.ts';
import { statedShares, USUAL_SHARES } from './identify/unknowns.ts';
import type { ThrustGaps } from './thrustGaps.ts';
import type { ChosenTracks } from './tracks.ts';
import type { GroundTrack } from './types.ts';

/** What both readings of an unseen heading are held against; arrays on the flight's axis. */
export interface ReadingQuestion {
  readonly mission: Mission;
  readonly time: Float64Array;
  readonly radius: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly flightPathAngle: Float64Array;
  readonly pitch: Float64Array | null;
  readonly dynamicPressure: Float64Array;
  /** One-sigma error of a speed sample, m/s. */
  readonly speedSigma_m_s: number;
}

/** Thinner air does nothing to the speed that a heading would have to answer for, Pa. */
const THIN_PA = 100;
/** Error of a speed that every point is allowed, m/s: quadrature, and what the smoother bends. */
const POINT_SIGMA_M_S = 0.05;
const MOST_POINTS = 200;
const FEWEST_POINTS = 10;
/** Another reading than the usual one must leave this share of its misfit at most, and so much less of it. */
const BETTER_SHARE = 0.5;
const BETTER_BY = 20;

/**
 * Which reading of an unseen heading is taken: thrust that holds the azimuth by compass, unless the equation of motion
 * along the path, above the air and under thrust, closes clearly better on the great circle (METHODS §3): each burn
 * with a free start speed and a factor on its thrust near 1, so that a card's error is not taken for a heading. With no
 * vehicle in the card it is the first: a fitted engine would make up for either.
 * @param gaps the card's engines
 */
export function headingReading(
  q: ReadingQuestion,
  gaps: ThrustGaps,
  tracksOf: (gaps: ThrustGaps) => ChosenTracks,
): 'held-azimuth' | 'great-circle' {
  if (q.mission.vehicle === null || !gaps.known || q.pitch === null) return 'held-azimuth';
  const { track, other } = tracksOf(gaps);
  if (other === null) return 'held-azimuth';
  const [was, is] = [misfit(q, gaps, track), misfit(q, gaps, other)];
  return is < BETTER_SHARE * was && is < was - BETTER_BY ? 'great-circle' : 'held-azimuth';
}

/** Sum of squares of what the equation leaves of the speeds, in their errors, over the burns in thin air. */
function misfit(q: ReadingQuestion, gaps: ThrustGaps, track: GroundTrack): number {
  const { time, speed, dynamicPressure } = q;
  const { pull, push, spin } = alongPath(q.mission.world, { ...q, ...track });
  const sigma = Math.max(POINT_SIGMA_M_S, q.speedSigma_m_s);
  const share = (statedShares(q.mission) ?? USUAL_SHARES).isp;
  let sum = 0;
  for (let i = 0; i < gaps.burn.length; ) {
    const burn = gaps.burn[i]!;
    let end = i;
    while (end < gaps.burn.length && gaps.burn[end] === burn && dynamicPressure[end]! < THIN_PA) end++;
    if (burn === -1 || end - i < FEWEST_POINTS) {
      i = Math.max(end, i + 1);
      continue;
    }
    const earned: number[] = [];
    const told: number[] = [];
    const stride = Math.ceil((end - i) / MOST_POINTS);
    let gained = 0;
    let taken = 0;
    for (let k = i; k < end; k++) {
      const thrust = gaps.vacuum[k]! - gaps.back[k]!;
      gained += (thrust * (push[k]! + push[k + 1]!)) / 2;
      taken += ((pull[k]! + pull[k + 1]! - spin[k]! - spin[k + 1]!) / 2) * (time[k + 1]! - time[k]!);
      if ((k - i) % stride !== 0) continue;
      earned.push(gained);
      told.push(speed[k + 1]! + taken);
    }
    sum += lineMisfit(earned, told, sigma, share);
    i = end;
  }
  return sum;
}

/** What a line y = y₀ + k·x leaves of some points, in their errors, k being 1 but for a share. */
function lineMisfit(x: readonly number[], y: readonly number[], sigma: number, share: number): number {
  const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length;
  const [x0, y0] = [mean(x), mean(y)];
  let xx = 0;
  let xy = 0;
  for (let k = 0; k < x.length; k++) {
    xx += (x[k]! - x0) ** 2;
    xy += (x[k]! - x0) * (y[k]! - y0);
  }
  const prior = (sigma / share) ** 2;
  const slope = (xy + prior) / (xx + prior);
  const left = x.reduce((s, at, k) => s + (y[k]! - y0 - slope * (at - x0)) ** 2, 0);
  return left / (sigma * sigma) + ((slope - 1) / share) ** 2;
}

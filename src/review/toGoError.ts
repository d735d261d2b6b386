import { edgeExcess } from '../flight/edgeExcess.ts';
import { stateSigma } from '../flight/stateSigma.ts';
import type { Flight } from '../flight/types.ts';
import { toGoAt } from '../ledger/budget.ts';
import type { ToGoAlong } from '../orbit/toGoAlong.ts';
import { NORMAL_95 } from './figure.ts';
import { roundingHalves } from './orbitFigures.ts';

/**
 * How sure the delta-v to go is. It hangs on the state: about one for one on the speed, on the altitude as the
 * orbit's speed does, and on the vertical speed twice, since where the speed is logged the horizontal part is what
 * the vertical leaves of it.
 */

/** Steepest path's tangent by which a vertical error is carried over to the horizontal speed. */
const STEEPEST = 10;

/** One-sigma error of the delta-v to go at axis point `i`, m/s, by whole searches: for the moment that is told. */
export function toGoSigma(flight: Flight, i: number, toGo_m_s: number | null): number {
  const state = stateSigma(flight, i);
  const reach = Math.max(state.verticalSpeed_m_s, roundingHalves(flight, i).rate_m_s / NORMAL_95);
  return Math.hypot(
    state.speed_m_s,
    rateEffect(flight, i, toGo_m_s, reach),
    state.altitude_m * perMetre(flight, i),
  );
}

/** Samples between which the slopes are led straight: a search at every point would cost more than the review. */
const SLOPE_NODES = 48;

/**
 * The same along the flight, by the slopes of the ways that the budget found.
 * @param index axis points, rising
 * @returns one-sigma errors, m/s
 */
export function toGoSigmas(flight: Flight, index: readonly number[], ways: ToGoAlong): number[] {
  const stride = Math.max(1, Math.floor(index.length / SLOPE_NODES));
  const slopes = index
    .filter((_, k) => k % stride === 0 || k === index.length - 1)
    .map((i) => ({ i, ...ways.slopesAt(i - flight.liftOffIndex) }));
  const excess = edgeExcess(flight);
  const { noise } = flight;
  const seenFrom = pathSeenFrom(flight);
  let k = 0;
  return index.map((i) => {
    while (k + 2 < slopes.length && slopes[k + 1]!.i <= i) k++;
    const from = slopes[k]!;
    const to = slopes[k + 1] ?? from;
    const share = to.i === from.i ? 0 : (i - from.i) / (to.i - from.i);
    const radial = from.radial + share * (to.radial - from.radial);
    const state = stateSigma(flight, i);
    const angle = flight.riseAngleSigma[i]!;
    const gathered = Number.isFinite(angle)
      ? Math.abs(perAcross(flight, i) * flight.verticalSpeed[i]!) * angle
      : 0;
    const seen =
      i < seenFrom
        ? 0
        : Math.abs(radial - acrossPerUp(flight, i)) *
          Math.max(
            state.verticalSpeed_m_s,
            noise.verticalSpeed_m_s * excess(i),
            roundingHalves(flight, i).rate_m_s / NORMAL_95,
          );
    const turned = Math.hypot(gathered, seen);
    return Math.hypot(state.speed_m_s, turned, state.altitude_m * perMetre(flight, i));
  });
}

/**
 * Axis point from which the altitude rather than the pitch tells the path's angle. Both readings are weighed by their
 * errors; what the gathered one leaves in the horizontal speed is largest where they weigh the same.
 */
function pathSeenFrom(flight: Flight): number {
  const { riseAngleSigma, horizontalSpeed } = flight;
  let at = 0;
  let most = 0;
  for (let i = 0; i < riseAngleSigma.length; i++) {
    const left = riseAngleSigma[i]! * horizontalSpeed[i]!;
    if (left > most) {
      most = left;
      at = i;
    }
  }
  return at;
}

/** Change of delta-v to go with the altitude, m/s per m. */
function perMetre(flight: Flight, i: number): number {
  return (
    flight.mission.world.mu_m3_s2 / (2 * flight.radius[i]! ** 2 * Math.max(1, flight.track.inertialSpeed[i]!))
  );
}

/** Change of the horizontal inertial speed with that over the ground: the ground's own motion adds at an angle. */
function perAcross(flight: Flight, i: number): number {
  const { track, horizontalSpeed, radius, mission } = flight;
  const turning = mission.world.spin_rad_s * radius[i]! * Math.cos(track.latitude[i]!);
  const across = track.inertialHorizontalSpeed[i]!;
  return across > 1 ? (horizontalSpeed[i]! + turning * Math.sin(track.course[i]!)) / across : 1;
}

/** What a vertical speed too high takes from the horizontal inertial speed, where that is the rest of the speed. */
function acrossPerUp(flight: Flight, i: number): number {
  if (flight.log.channels.speed === undefined) return 0;
  const tangent = flight.verticalSpeed[i]! / Math.max(flight.horizontalSpeed[i]!, 1e-9);
  return perAcross(flight, i) * Math.max(-STEEPEST, Math.min(STEEPEST, tangent));
}

/**
 * What the vertical speed's error does to the delta-v to go at axis point `i`, m/s, one sigma: the larger of both
 * ways. Rounding that leaves the rate open over a box counts as the sigma of that reach.
 */
function rateEffect(flight: Flight, i: number, toGo_m_s: number | null, reach_m_s: number): number {
  if (toGo_m_s === null) return 0;
  const across = flight.track.inertialHorizontalSpeed[i]!;
  let most = 0;
  for (const step of [reach_m_s, -reach_m_s]) {
    const verticalSpeed = Float64Array.from(flight.verticalSpeed);
    verticalSpeed[i] = verticalSpeed[i]! + step;
    const moved = toGoAt({ ...flight, verticalSpeed }, i, across - acrossPerUp(flight, i) * step);
    if (moved !== null && Number.isFinite(moved)) most = Math.max(most, Math.abs(moved - toGo_m_s));
  }
  return most;
}

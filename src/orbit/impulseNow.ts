import { goldenSection } from './goldenSection.ts';
import { speedAtApsis } from './transfers.ts';

/** Square of a number, or 0 where rounding has made it negative. */
const rootOf = (square: number): number => Math.sqrt(Math.max(0, square));

/**
 * Least tangential speed, at radius 1 with a given square of the speed, that keeps a falling conic's periapsis at
 * the floor or above it (energy and momentum at the floor equal those here).
 */
const clearing = (speedSquare: number, floor: number): number => floor * rootOf(speedSquare + 2 / floor - 2);

/**
 * The one impulse now after which the free path rises to a peak radius, in units of the present radius and the
 * circular speed there; 0 when it does already or when the vehicle is there. A path that falls first counts when
 * it turns above the floor.
 */
export function impulseToPeak(up: number, along: number, floor: number, peak: number): number {
  if (peak <= 1) return 0;
  const square = up * up + along * along;
  const reaches =
    // Speed enough: the conic through the peak at rest across it, at this angular momentum (energy at the peak).
    square >= 2 - 2 / peak + (along / peak) ** 2;
  if (reaches && (up >= 0 || along >= clearing(square, floor))) return 0;
  // The states whose apoapsis is the peak lie on an ellipse in the plane of speeds: tangential cos φ, radial sin φ.
  const across = speedAtApsis(1, 1, peak);
  const upward = rootOf(2 - 2 / peak);
  const fall = Math.acos(Math.min(1, speedAtApsis(1, peak, floor) / speedAtApsis(1, peak, 1)));
  return leastOn(
    (phi) => Math.hypot(across * Math.cos(phi) - along, upward * Math.sin(phi) - up),
    -fall,
    Math.PI / 2,
  );
}

/**
 * The one impulse now after which the square of the speed far away is `c3` (negative: twice the energy of a bound
 * path), same units. A path that falls first counts when it turns above the floor.
 */
export function impulseToEscape(up: number, along: number, floor: number, c3: number): number {
  const square = Math.max(0, c3 + 2);
  const speed = Math.sqrt(square);
  const fall = rootOf(square - clearing(square, floor) ** 2);
  const now = Math.hypot(up, along);
  // Along the present speed, unless that falls too steeply: then the steepest fall that is allowed.
  if (now === 0 || speed * up >= -fall * now) return Math.abs(speed - now);
  return Math.hypot(up + fall, along - rootOf(square - fall * fall));
}

/** Least value of a function of one angle between two bounds: a coarse look, then golden sections. */
function leastOn(f: (angle: number) => number, low: number, high: number): number {
  const pieces = 24;
  const step = (high - low) / pieces;
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= pieces; i++) {
    const here = f(low + i * step);
    const before = low + Math.max(0, i - 1) * step;
    const after = low + Math.min(pieces, i + 1) * step;
    if (here > f(before) || here > f(after)) continue;
    best = Math.min(best, here, f(goldenSection(f, before, after, 1e-9)));
  }
  return best;
}

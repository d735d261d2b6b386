import { stumpff } from './stumpff.ts';

/** A vector in an inertial frame. */
export type Vector = readonly [number, number, number];

/** Position from the world's centre and inertial velocity. */
export interface StateVector {
  readonly position_m: Vector;
  readonly velocity_m_s: Vector;
}

/**
 * Universal anomaly counted from periapsis, negative before it, at a radius with r·ṙ = `sigma`, in units with
 * μ = 1: eccentric anomaly times √a, its hyperbolic twin, or `sigma` itself on a parabola. `alpha` is 1/a.
 * At a bound orbit's apoapsis it is ±π/√alpha by the sign of `sigma` (+ for +0). Source: Battin 1999, §4.5.
 */
export function anomalyFromPeriapsis(alpha: number, radius: number, sigma: number): number {
  const root = Math.sqrt(Math.abs(alpha));
  if (root < 1e-12) return sigma;
  const cosine = 1 - alpha * radius;
  return (alpha > 0 ? Math.atan2(root * sigma, cosine) : Math.atanh((root * sigma) / cosine)) / root;
}

/**
 * Time from the present to the universal anomaly `chi` counted from it, on a conic with the present radius 1,
 * r·ṙ = `sigma` and 1/a = `alpha`, μ = 1: Kepler's equation for all conics (Battin 1999, eq. 4.81).
 */
export function timeAtAnomaly(alpha: number, sigma: number, chi: number): number {
  const { c1, c2, c3 } = stumpff(alpha * chi * chi);
  return chi * (c1 + chi * (sigma * c2 + chi * c3));
}

/** The anomaly at a time: the inverse of `timeAtAnomaly`, by Newton's method inside a bracket. */
function anomalyAtTime(alpha: number, sigma: number, time: number): number {
  let low = 0;
  let high = 0;
  let reach = alpha > 0 ? Math.max(1, Math.abs(alpha * time)) : 1;
  // Time grows with the anomaly at the rate of the radius, which is positive.
  while (timeAtAnomaly(alpha, sigma, high) < time) {
    low = high;
    high += reach;
    reach *= 1.5;
  }
  while (timeAtAnomaly(alpha, sigma, low) > time) {
    high = low;
    low -= reach;
    reach *= 1.5;
  }
  let chi = 0.5 * (low + high);
  for (let round = 0; round < 200; round++) {
    const { c0, c1, c2, c3 } = stumpff(alpha * chi * chi);
    const error = chi * (c1 + chi * (sigma * c2 + chi * c3)) - time;
    if (error > 0) high = chi;
    else low = chi;
    const radius = c0 + chi * (sigma * c1 + chi * c2);
    let next = chi - error / radius;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (Math.abs(next - chi) <= 4e-16 * (1 + Math.abs(chi))) return next;
    chi = next;
  }
  return chi;
}

/**
 * Two-body motion of a state through `time_s` (either sign) on any conic.
 * Sources: Battin 1999, eqs. 4.69–4.87; Vallado 2013, algorithm 8.
 */
export function propagate(mu_m3_s2: number, state: StateVector, time_s: number): StateVector {
  const { position_m: r0, velocity_m_s: v0 } = state;
  const distance = Math.hypot(...r0);
  const unit = Math.sqrt(mu_m3_s2 / distance);
  const sigma = dot(r0, v0) / (distance * unit);
  const alpha = 2 - dot(v0, v0) / (unit * unit);
  let time = (time_s * unit) / distance;
  if (alpha > 0) time %= 2 * Math.PI * alpha ** -1.5;
  const chi = anomalyAtTime(alpha, sigma, time);
  const { c0, c1, c2, c3 } = stumpff(alpha * chi * chi);
  const radius = c0 + chi * (sigma * c1 + chi * c2);
  // Lagrange's coefficients.
  const f = 1 - chi * chi * c2;
  const g = ((time - chi * chi * chi * c3) * distance) / unit;
  const fRate = (-(chi * c1) / radius) * (unit / distance);
  const gRate = 1 - (chi * chi * c2) / radius;
  return { position_m: combine(f, r0, g, v0), velocity_m_s: combine(fRate, r0, gRate, v0) };
}

/** The radial part of a motion in units of its present radius and the circular speed there. */
function scaled(mu_m3_s2: number, radius_m: number, radialSpeed_m_s: number, tangentialSpeed_m_s: number) {
  const unit = Math.sqrt(mu_m3_s2 / radius_m);
  const sigma = radialSpeed_m_s / unit;
  const momentum = tangentialSpeed_m_s / unit;
  return { sigma, momentum, alpha: 2 - sigma * sigma - momentum * momentum, unit_s: radius_m / unit };
}

/**
 * Time until the free path next passes a radius on its way up (`rising`) or down; null when it never does.
 * 0 when it does so now. Inertial speeds; seconds.
 */
export function timeToRadius(
  mu_m3_s2: number,
  radius_m: number,
  radialSpeed_m_s: number,
  tangentialSpeed_m_s: number,
  goal_m: number,
  way: 'rising' | 'falling',
): number | null {
  const { sigma, momentum, alpha, unit_s } = scaled(mu_m3_s2, radius_m, radialSpeed_m_s, tangentialSpeed_m_s);
  const goal = goal_m / radius_m;
  // (r·ṙ)² at the goal, from energy and momentum.
  const square = goal * (2 - alpha * goal) - momentum * momentum;
  if (square < 0) return null;
  const sigmaThere = (way === 'rising' ? 1 : -1) * Math.sqrt(square);
  return timeToAnomaly(alpha, sigma, anomalyFromPeriapsis(alpha, goal, sigmaThere), unit_s);
}

/** Time until the free path's next apoapsis (null when unbound) or periapsis (null when it lies behind for good). */
export function timeToApsis(
  mu_m3_s2: number,
  radius_m: number,
  radialSpeed_m_s: number,
  tangentialSpeed_m_s: number,
  apsis: 'apoapsis' | 'periapsis',
): number | null {
  const { sigma, alpha, unit_s } = scaled(mu_m3_s2, radius_m, radialSpeed_m_s, tangentialSpeed_m_s);
  if (apsis === 'periapsis') return timeToAnomaly(alpha, sigma, 0, unit_s);
  return alpha > 0 ? timeToAnomaly(alpha, sigma, Math.PI / Math.sqrt(alpha), unit_s) : null;
}

function timeToAnomaly(alpha: number, sigma: number, fromPeriapsis: number, unit_s: number): number | null {
  let chi = fromPeriapsis - anomalyFromPeriapsis(alpha, 1, sigma);
  if (chi < 0) {
    if (alpha <= 0) return null;
    chi += (2 * Math.PI) / Math.sqrt(alpha);
  }
  return timeAtAnomaly(alpha, sigma, chi) * unit_s;
}

/** Scalar product. */
export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Vector product. */
export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** p·a + q·b. */
export function combine(p: number, a: Vector, q: number, b: Vector): Vector {
  return [p * a[0] + q * b[0], p * a[1] + q * b[1], p * a[2] + q * b[2]];
}

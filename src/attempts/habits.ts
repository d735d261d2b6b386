import { indexAt, valueAt } from '../review/sampleAt.ts';
import type { Review, StripName, Strips } from '../review/types.ts';
import type { HabitName } from './types.ts';

/** The tilt is read so long after pitch-over began, s. */
const TILT_AFTER_S = 10;
/** Dense air: from this share of the flight's own greatest dynamic pressure. */
const DENSE_SHARE = 0.25;

/**
 * What the pilot did, as numbers; null where the log does not show it.
 * - `pitchOverTime_s`: when the pitch-over begins, s from lift-off;
 * - `pitchOverAngle_deg`: tilt of the thrust axis (else of the path) from the vertical ten seconds later;
 * - `thrustToWeightAtMaxQ`;
 * - `angleOfAttackInAir_deg`: mean over the time in which the dynamic pressure is a quarter of its greatest or more;
 * - `cutoffError_m_s`: speed at the ascent's last cutoff less that of an orbit of the target's energy there:
 *   positive = burnt too long.
 */
export function habitsOf(review: Review, strips: Strips | null): Record<HabitName, number | null> {
  const at = (name: StripName, time_s: number): number | null => {
    const channel = strips?.channels[name];
    return strips === null || channel === undefined ? null : valueAt(strips.time_s, channel.values, time_s);
  };
  const timeOf = (name: string): number | null =>
    review.events.find((e) => e.name === name && e.time_s <= review.ledger.end_s)?.time_s ?? null;
  const over = timeOf('pitch-over');
  const maxQ = timeOf('max-q');
  const tilt =
    over === null
      ? null
      : (at('pitch_deg', over + TILT_AFTER_S) ?? at('flightPathAngle_deg', over + TILT_AFTER_S));
  return {
    pitchOverTime_s: over,
    pitchOverAngle_deg: tilt === null ? null : 90 - tilt,
    thrustToWeightAtMaxQ: maxQ === null ? null : at('thrustToWeight', maxQ),
    angleOfAttackInAir_deg: meanInDenseAir(review, strips),
    cutoffError_m_s: cutoffError(review, at),
  };
}

function meanInDenseAir(review: Review, strips: Strips | null): number | null {
  const pressure = strips?.channels.dynamicPressure_Pa?.values;
  const angle = strips?.channels.angleOfAttack_deg?.values;
  if (strips === null || pressure === undefined || angle === undefined) return null;
  const { time_s } = strips;
  const end = indexAt(time_s, review.ledger.end_s);
  let most = 0;
  for (let i = 0; i <= end; i++) if (pressure[i]! > most) most = pressure[i]!;
  let sum = 0;
  let weight = 0;
  for (let i = 1; i <= end; i++) {
    if (!(pressure[i]! >= DENSE_SHARE * most) || !Number.isFinite(angle[i]!)) continue;
    const dt = time_s[i]! - time_s[i - 1]!;
    sum += angle[i]! * dt;
    weight += dt;
  }
  return weight > 0 ? sum / weight : null;
}

function cutoffError(review: Review, at: (name: StripName, time_s: number) => number | null): number | null {
  const { targetOrbit, constants } = review.mission;
  const { cutoff_s, atCutoff } = review.orbit;
  const axis = atCutoff.semiMajorAxis_m.value;
  if (targetOrbit === null || cutoff_s === null || axis === null || !(axis > 0)) return null;
  const altitude = at('altitude_m', cutoff_s) ?? altitudeAtCutoff(review, cutoff_s);
  if (altitude === null) return null;
  const radius = constants.radiusAtSite_m + altitude;
  const wanted = constants.radius_m + (targetOrbit.apoapsisAltitude_m + targetOrbit.periapsisAltitude_m) / 2;
  // Vis viva: v² = μ(2/r − 1/a).
  const speed = (a: number) =>
    Math.sqrt(Math.max(0, constants.gravitationalParameter_m3_s2 * (2 / radius - 1 / a)));
  return speed(axis) - speed(wanted);
}

function altitudeAtCutoff(review: Review, cutoff_s: number): number | null {
  return (
    review.events.find((e) => e.name === 'cutoff' && Math.abs(e.time_s - cutoff_s) < 0.01)?.altitude_m ?? null
  );
}

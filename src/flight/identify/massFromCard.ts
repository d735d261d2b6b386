import type { Vehicle } from '../../mission/types.ts';
import { liftOffMass_kg } from '../../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';

/** A stage with less than this share of its propellant left is taken to be spent when the engines start again. */
const SPENT_SHARE = 0.03;

/**
 * Mass on the log's rows from the card and the throttle alone: the lift-off mass less throttle × Tvac/(g0·Isp), a
 * spent stage thrown off in the middle of the pause before the next one burns, parts at their times or altitudes.
 * Null where the card lacks a mass, thrust or specific impulse, or has boosters or thrust curves, which no throttle
 * tells. Times from lift-off; throttle as a fraction of full.
 */
export function massFromCard(
  t: Float64Array,
  altitude: Float64Array,
  throttle: Float64Array,
  vehicle: Vehicle,
): Float64Array | null {
  const start = liftOffMass_kg(vehicle);
  if (start === null || vehicle.stages.length === 0) return null;
  const stages = vehicle.stages.map((s) => ({
    dry: s.dryMass_kg,
    load: s.propellantMass_kg,
    flow:
      s.thrustVacuum_N === null || s.ispVacuum_s === null
        ? null
        : s.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * s.ispVacuum_s),
    simple: s.boosters.length === 0 && s.thrustCurve === null,
  }));
  if (stages.some((s) => s.dry === null || s.load === null || s.flow === null || !s.simple)) return null;
  const mass = new Float64Array(t.length);
  const gone = new Set<number>();
  let now = start;
  let stage = 0;
  let left = stages[0]!.load!;
  let pause = -1;
  mass[0] = start;
  for (let i = 1; i < t.length; i++) {
    const lit = throttle[i]! > 0;
    if (lit && throttle[i - 1]! <= 0 && pause >= 0) stageIfSpent(pause, i);
    const open = ((throttle[i - 1]! + throttle[i]!) / 2) * (t[i]! - t[i - 1]!);
    const burnt = Math.min(left, stages[stage]!.flow! * open);
    left -= burnt;
    now -= burnt;
    vehicle.jettisons.forEach((part, k) => {
      const due = part.time_s !== null ? t[i]! >= part.time_s : altitude[i]! >= (part.altitude_m ?? 1e99);
      if (!due || gone.has(k)) return;
      gone.add(k);
      now -= part.mass_kg;
    });
    mass[i] = now;
    if (!lit && throttle[i - 1]! > 0) pause = i;
  }
  return mass;

  /** Throws the spent stage off in the middle of the pause from row `from` to the ignition before row `to`. */
  function stageIfSpent(from: number, to: number): void {
    const spent = stages[stage]!;
    if (left > SPENT_SHARE * spent.load! || stage + 1 >= stages.length) return;
    const off = spent.dry! + left;
    const middle = (from + to) >> 1;
    for (let k = middle; k < to; k++) mass[k]! -= off;
    now -= off;
    stage++;
    left = stages[stage]!.load!;
  }
}

import type { Flight } from '../flight/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { StageScript } from './flightScript.ts';
import type { Rocket, RocketStage } from './rocket.ts';

/** Air is thin where the dynamic pressure has fallen under this, Pa. */
const THIN_PA = 1000;
/** Share of what the first burn used that is the lower part's at least: the rise and the turn. */
const LEAST_SHARE = 0.2;
/** No more of it than this, or nothing is left to steer. */
const MOST_SHARE = 0.7;

/**
 * How much of its propellant a rocket's only stage had used where its upper part begins, kg: when the turn is done,
 * the air is thin and the boosters are gone.
 * @returns null where too little of the burn is left by then
 */
export function handoverUsed_kg(flight: Flight, only: StageScript, rocket: Rocket): number | null {
  const stage = rocket.stages[0]!;
  const first = only.burns[0]!;
  const all = Math.min(only.used_kg.at(-1)!, stage.propellantMass_kg - (first.left_kg ?? 0));
  const gone_s = stage.boosters.reduce(
    (last, b) =>
      Math.max(
        last,
        b.separationTime_s ??
          b.ignitionTime_s + (b.propellantMass_kg * STANDARD_GRAVITY_M_S2 * b.ispVacuum_s) / b.thrustVacuum_N,
      ),
    0,
  );
  let from_s = gone_s;
  for (let i = 0; i < flight.time.length; i++) {
    if (flight.time[i]! > only.time_s.at(-1)!) break;
    if (flight.dynamicPressure[i]! > THIN_PA) from_s = Math.max(from_s, flight.time[i]!);
  }
  const k = only.time_s.findIndex((t) => t > from_s);
  if (k < 0) return null;
  const used = Math.max(only.used_kg[k]!, LEAST_SHARE * all);
  return used > MOST_SHARE * all ? null : used;
}

/** The script of a stage in two parts, the second from so much used propellant on. */
export function splitStage(only: StageScript, stage: RocketStage, used_kg: number): StageScript[] | null {
  const k = only.used_kg.findIndex((u) => u >= used_kg);
  if (k < 1 || k > only.used_kg.length - 2) return null;
  const part = (from: number, to: number) => ({
    stage: only.stage,
    used_kg: only.used_kg.slice(from, to),
    time_s: only.time_s.slice(from, to),
    pitch_rad: only.pitch_rad.slice(from, to),
    throttle: only.throttle.slice(from, to),
  });
  return [
    {
      ...part(0, k + 1),
      burns: [{ coast_s: 0, left_kg: stage.propellantMass_kg - used_kg }],
      separation_s: null,
    },
    {
      ...part(k - 1, only.used_kg.length),
      burns: only.burns.map((b, i) => (i === 0 ? { ...b, coast_s: 0 } : b)),
      separation_s: only.separation_s,
    },
  ];
}

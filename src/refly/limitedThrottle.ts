import type { Limits } from '../mission/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { Program } from './controls.ts';
import { held } from './controls.ts';
import type { Rocket, RocketStage } from './rocket.ts';

/** Part of the pressure limit over which the throttle closes: a bucket with sloping walls. */
const BUCKET_WALL = 0.05;
/** The bucket is complete a little under the limit, so that the peak stays under it. */
const BUCKET_BOTTOM = 0.99;

/**
 * Full throttle, but less where a limit asks for it: so much that thrust over mass keeps to the acceleration
 * limit, and a bucket as dynamic pressure comes near its limit. No engine goes below its own least throttle.
 * @param throttleMin least throttle of each stage, fraction of full
 */
export function limitedThrottle(rocket: Rocket, throttleMin: readonly number[], limits: Limits): Program {
  const { acceleration_m_s2, dynamicPressure_Pa } = limits;
  if (acceleration_m_s2 === null && dynamicPressure_Pa === null) return held(1);
  return {
    at: (s) => {
      const least = throttleMin[s.stage] ?? 1;
      const stage = rocket.stages[s.stage];
      if (least >= 1 || stage === undefined || stage.thrustCurve !== null) return 1;
      let throttle = 1;
      if (dynamicPressure_Pa !== null) {
        const bottom = BUCKET_BOTTOM * dynamicPressure_Pa;
        const depth = (s.dynamicPressure_Pa - (1 - BUCKET_WALL) * bottom) / (BUCKET_WALL * bottom);
        throttle = 1 - (1 - least) * Math.min(1, Math.max(0, depth));
      }
      if (acceleration_m_s2 !== null) {
        const boost_N = boosterThrust_N(stage, s.time_s);
        const lost_N = s.pressure_Pa * stage.exitArea_m2;
        const free_N = acceleration_m_s2 * s.mass_kg - boost_N + lost_N;
        throttle = Math.min(throttle, free_N / stage.thrustVacuum_N);
      }
      return Math.max(least, throttle);
    },
  };
}

/** Thrust of the boosters that burn at a time from lift-off. */
function boosterThrust_N(stage: RocketStage, time_s: number): number {
  let sum = 0;
  for (const b of stage.boosters) {
    const burn_s = (b.propellantMass_kg * STANDARD_GRAVITY_M_S2 * b.ispVacuum_s) / b.thrustVacuum_N;
    const since = time_s - b.ignitionTime_s;
    if (since >= 0 && since < burn_s) sum += b.thrustVacuum_N;
  }
  return sum;
}

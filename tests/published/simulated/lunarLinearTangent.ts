import { Ascent } from '../../../src/refly/ascent.ts';
import { carriedLedger } from '../../../src/refly/carriedLedger.ts';
import { held, linearTangent } from '../../../src/refly/controls.ts';
import { SteadyRecorder } from '../../../src/refly/recorder.ts';
import type { Rocket } from '../../../src/refly/rocket.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../../src/units/standardGravity.ts';
import type { World } from '../../../src/world/types.ts';
import type { SimulatedFlight } from './simulatedFlight.ts';
import { eventOf, logOf, sampled } from './simulatedFlight.ts';

const gravity_m_s2 = 1.61544;
const mass_kg = 50000;
const thrust_N = 3 * mass_kg * gravity_m_s2;
const exhaustSpeed_m_s = gravity_m_s2 * 1e6;
const isp_s = exhaustSpeed_m_s / STANDARD_GRAVITY_M_S2;
const propellant_kg = 100;
const burn_s = 481.7168;
const radius_m = 1.7374e6;

/** The flat Moon of the textbook; its gravity is uniform when flown with `shape: 'flat'`. */
export const flatMoon: World = {
  name: 'flat Moon',
  mu_m3_s2: gravity_m_s2 * radius_m ** 2,
  radius_m,
  spin_rad_s: 0,
  orbitFloor_m: 0,
  ellipsoid: null,
  atmosphere: null,
  source: 'textbook case',
};

const stage = {
  name: 'ascent stage',
  dryMass_kg: mass_kg - propellant_kg,
  propellantMass_kg: propellant_kg,
  thrustVacuum_N: thrust_N,
  ispVacuum_s: isp_s,
  exitArea_m2: 0,
};

/** Its vehicle, whose mass hardly changes. */
export const lunarRocket: Rocket = {
  payload_kg: 0,
  jettisons: [],
  stages: [{ ...stage, dragArea: () => 0, thrustCurve: null, boosters: [] }],
};

/**
 * Ascent from a flat Moon by linear-tangent steering (Longuski, Guzmán & Prussing, Optimal Control with
 * Aerospace Applications, §4.6), with the two steering constants as known; a coast of 80 s follows.
 */
export function simulateLunarLinearTangent(): SimulatedFlight & { altitude_m: number; climb_m_s: number } {
  const ascent = new Ascent(flatMoon, lunarRocket, { shape: 'flat', relativeTolerance: 1e-11 });
  const recorder = new SteadyRecorder(sampled, 0.1);
  const result = ascent.fly(
    {
      start: {
        kind: 'pad',
        latitude_rad: 0,
        longitude_rad: 0,
        altitude_m: 0,
        course_rad: Math.PI / 2,
        holdDown_s: 0,
      },
      controls: {
        throttle: held(1),
        pitch: linearTangent(2.74739928, 0.00828051),
        heading: held(Math.PI / 2),
      },
      steps: [
        { do: 'burn', until: { kind: 'time', time_s: burn_s } },
        { do: 'coast', until: { kind: 'duration', duration_s: 80 } },
      ],
    },
    recorder,
  );
  const lit = eventOf(result, 'ignition');
  const out = eventOf(result, 'cutoff');
  const ledger = carriedLedger(flatMoon, lit.state, out.state, 'ground');
  const end = ascent.observe(out.time_s, out.state);
  return {
    altitude_m: end.altitude_m,
    climb_m_s: end.verticalSpeed_m_s,
    log: logOf(recorder.columns()),
    card: JSON.stringify({
      mission: 'flat Moon, linear tangent',
      // So wide that gravity stays what it is on the ground.
      world: { name: 'flat Moon', surfaceGravity_m_s2: gravity_m_s2, radius_m: 1e12, atmosphere: null },
      target: { kind: 'suborbital', peakAltitude_m: 185000 },
      vehicle: { payload_kg: 0, stages: [stage] },
    }),
    burnout_s: out.time_s,
    truth: { ...ledger, speed: ledger.speedGained },
  };
}

import { Ascent } from '../../../src/refly/ascent.ts';
import { carriedLedger } from '../../../src/refly/carriedLedger.ts';
import { held } from '../../../src/refly/controls.ts';
import { SteadyRecorder } from '../../../src/refly/recorder.ts';
import type { World } from '../../../src/world/types.ts';
import type { SimulatedFlight } from './simulatedFlight.ts';
import { eventOf, logOf, sampled } from './simulatedFlight.ts';

const gravity_m_s2 = 9.80665;
const isp_s = 300;
// Not a round number: masses printed as whole kilograms would be read as rounded to them.
const fullMass = 12000.37;
const thrust_N = 2 * fullMass * gravity_m_s2;
const propellant_kg = fullMass * (1 - 1 / 4);

/** Constant gravity: a plane, not a sphere. */
const plane: World = {
  name: 'plane',
  mu_m3_s2: gravity_m_s2 * 6e6 ** 2,
  radius_m: 6e6,
  spin_rad_s: 0,
  orbitFloor_m: 0,
  ellipsoid: null,
  atmosphere: null,
  source: 'textbook case',
};

/**
 * Sounding rocket, vertical, no air, constant gravity (Curtis, Orbital Mechanics for Engineering Students,
 * example 11.2 / 13.2): Isp 300 s, thrust-to-weight 2, mass ratio 4; burn and coast to the peak.
 */
export function simulateVerticalRocket(): SimulatedFlight & {
  burnoutAltitude_m: number;
  peakAltitude_m: number;
} {
  const ascent = new Ascent(
    plane,
    {
      payload_kg: 0,
      jettisons: [],
      stages: [
        {
          name: 'rocket',
          dryMass_kg: fullMass - propellant_kg,
          propellantMass_kg: propellant_kg,
          thrustVacuum_N: thrust_N,
          ispVacuum_s: isp_s,
          exitArea_m2: 0,
          dragArea: () => 0,
          thrustCurve: null,
          boosters: [],
        },
      ],
    },
    { shape: 'flat', relativeTolerance: 1e-11 },
  );
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
      controls: { throttle: held(1), pitch: held(Math.PI / 2), heading: held(Math.PI / 2) },
      steps: [
        { do: 'burn', until: { kind: 'empty' } },
        {
          do: 'coast',
          until: { kind: 'condition', value: (s) => s.verticalSpeed_m_s, direction: -1 },
        },
      ],
    },
    recorder,
  );
  const lit = eventOf(result, 'ignition');
  const out = eventOf(result, 'cutoff');
  const ledger = carriedLedger(plane, lit.state, out.state, 'ground');
  const burnoutAltitude_m = ascent.observe(out.time_s, out.state).altitude_m;
  const peakAltitude_m = ascent.observe(result.time_s, result.state).altitude_m;
  return {
    log: logOf(recorder.columns()),
    card: JSON.stringify({
      mission: 'vertical textbook rocket',
      // So wide that gravity stays what it is on the ground.
      world: { name: 'plane', surfaceGravity_m_s2: gravity_m_s2, radius_m: 1e12, atmosphere: null },
      target: { kind: 'suborbital', peakAltitude_m: 567298 },
      vehicle: {
        payload_kg: 0,
        stages: [
          {
            name: 'rocket',
            dryMass_kg: fullMass - propellant_kg,
            propellantMass_kg: propellant_kg,
            thrustVacuum_N: thrust_N,
            ispVacuum_s: isp_s,
            exitArea_m2: 0,
          },
        ],
      },
    }),
    burnout_s: out.time_s,
    truth: { ...ledger, speed: ledger.speedGained },
    burnoutAltitude_m,
    peakAltitude_m,
  };
}

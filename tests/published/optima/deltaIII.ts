import { elementsFromState, type OrbitalElements } from '../../../src/orbit/elements.ts';
import { Ascent } from '../../../src/refly/ascent.ts';
import { constrainedMinimum } from '../../../src/refly/constrainedMinimum.ts';
import type { FlightProgram } from '../../../src/refly/flightProgram.ts';
import { place } from '../../../src/refly/motion.ts';
import type { Rocket } from '../../../src/refly/rocket.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../../src/units/standardGravity.ts';
import type { World } from '../../../src/world/types.ts';
import { splineControl } from './splineControl.ts';

const degree = Math.PI / 180;

// All numbers: PSOPT, examples/launch/launch.cxx (after Benson 2004 and the GPOPS manual).
const mu_m3_s2 = 3.986012e14;
const latitude_rad = 28.5 * degree;
const target = {
  semiMajorAxis_m: 24361140,
  eccentricity: 0.7308,
  inclination_rad: 28.5 * degree,
  node_rad: 269.8 * degree,
  perigee_rad: 130.5 * degree,
};

const earth: World = {
  name: 'Earth of the benchmark',
  mu_m3_s2,
  radius_m: 6378145,
  spin_rad_s: 7.29211585e-5,
  orbitFloor_m: 0,
  ellipsoid: null,
  atmosphere: {
    model: 'exponential',
    source: 'benchmark',
    top_m: 1e7,
    at: (altitude_m, into = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 }) => {
      into.density_kg_m3 = 1.225 * Math.exp(-altitude_m / 7200);
      into.pressure_Pa = 0;
      into.soundSpeed_m_s = 300;
      return into;
    },
  },
  source: 'benchmark',
};

const boosterIsp_s = (628500 * 75.2) / (STANDARD_GRAVITY_M_S2 * 17010);
const boosters = (count: number, ignitionTime_s: number) => ({
  name: `${count} strap-ons`,
  dryMass_kg: count * (19290 - 17010),
  propellantMass_kg: count * 17010,
  thrustVacuum_N: count * 628500,
  ispVacuum_s: boosterIsp_s,
  exitArea_m2: 0,
  ignitionTime_s,
  separationTime_s: null,
});
const stage = { exitArea_m2: 0, dragArea: () => 0.5 * 4 * Math.PI, thrustCurve: null };

/** Payload lent to the second stage's tank, so that a poor first guess gets to its end as well. */
const lent_kg = 3000;

/** Delta III: core with strap-on boosters lit in two groups, and an upper stage. */
export const deltaIII: Rocket = {
  payload_kg: 4164 - lent_kg,
  jettisons: [],
  stages: [
    {
      ...stage,
      name: 'first',
      dryMass_kg: 104380 - 95550,
      propellantMass_kg: 95550,
      thrustVacuum_N: 1083100,
      ispVacuum_s: (1083100 * 261) / (STANDARD_GRAVITY_M_S2 * 95550),
      boosters: [boosters(6, 0), boosters(3, 75.2)],
    },
    {
      ...stage,
      name: 'second',
      dryMass_kg: 19300 - 16820,
      propellantMass_kg: 16820 + lent_kg,
      thrustVacuum_N: 110094,
      ispVacuum_s: (110094 * 700) / (STANDARD_GRAVITY_M_S2 * 16820),
      boosters: [],
    },
  ],
};

const pitchTimes = [0, 12, 28, 50, 75.2, 110, 150.4, 200, 261, 350, 480, 640, 780, 930];
const headingTimes = [0, 75.2, 150.4, 261, 400, 600, 930];

function program(x: Float64Array): FlightProgram {
  const pitch = splineControl(pitchTimes, x.subarray(0, pitchTimes.length));
  const heading = splineControl(headingTimes, x.subarray(pitchTimes.length));
  const energy = -mu_m3_s2 / (2 * target.semiMajorAxis_m);
  return {
    start: {
      kind: 'pad',
      latitude_rad,
      longitude_rad: 0,
      altitude_m: 0,
      course_rad: Math.PI / 2,
      holdDown_s: 0,
    },
    controls: { throttle: { at: () => 1 }, pitch, heading: { at: (s) => Math.PI / 2 + heading.at(s) } },
    steps: [
      { do: 'burn', until: { kind: 'empty' } },
      { do: 'separate' },
      {
        do: 'burn',
        until: {
          kind: 'condition',
          value: (s) => s.inertialSpeed_m_s ** 2 / 2 - mu_m3_s2 / s.radius_m - energy,
          direction: 1,
        },
      },
    ],
  };
}

/** Orbit of a state vector. */
function orbitOf(y: Float64Array) {
  return elementsFromState(mu_m3_s2, {
    position_m: [y[0]!, y[1]!, y[2]!],
    velocity_m_s: [y[3]!, y[4]!, y[5]!],
  });
}

/** Misses of the target: inclination, node, eccentricity and, where it is held, the argument of perigee. */
function misses(y: Float64Array, c: Float64Array): void {
  const orbit = orbitOf(y);
  c[0] = 10 * (orbit.inclination_rad - target.inclination_rad);
  c[1] = 10 * (orbit.ascendingNode_rad - target.node_rad);
  c[2] = 10 * (orbit.eccentricity - target.eccentricity);
  if (c.length > 3) c[3] = 10 * (orbit.argumentOfPeriapsis_rad - target.perigee_rad);
}

export interface DeltaIIIOptimum {
  readonly finalMass_kg: number;
  readonly time_s: number;
  readonly orbit: OrbitalElements;
  readonly settled: boolean;
  readonly controls: Float64Array;
}

/** A first guess: over by a quarter turn in the course of the ascent, due east. */
function firstGuess(): number[] {
  const pitch = pitchTimes.map((t) =>
    t < 261 ? 1.4 * (1 - t / 261) ** 1.2 + 0.001 * t : 0.25 * (1 - (t - 261) / 700),
  );
  return [...pitch, ...headingTimes.map(() => 0)];
}

/**
 * Greatest final mass in the benchmark's target orbit, the argument of perigee held or free.
 * @param from controls to begin with
 */
export function optimizeDeltaIII(
  perigeeHeld: boolean,
  from: ArrayLike<number> = firstGuess(),
): DeltaIIIOptimum {
  const ascent = new Ascent(earth, deltaIII, { carryLosses: false, relativeTolerance: 1e-9 });
  const size = pitchTimes.length + headingTimes.length;
  const end = constrainedMinimum(
    {
      size,
      constraints: perigeeHeld ? 4 : 3,
      lower: new Float64Array(size).fill(-2),
      upper: new Float64Array(size).fill(2),
      evaluate: (x, c) => {
        const { state, end: how } = ascent.fly(program(x));
        if (how !== 'flown' || !(state[place.stagePropellant]! > 0)) return Number.NaN;
        misses(state, c);
        return -state[place.mass]! / 100;
      },
    },
    from,
    { difference: 1e-4, rounds: 150, met: 1e-7, gain: 1e-6 },
  );
  // Flown again a thousand times more finely: what is told leans on no error of the search's integration.
  const fine = new Ascent(earth, deltaIII, { carryLosses: false, relativeTolerance: 1e-12 });
  const { time_s, state } = fine.fly(program(end.x));
  return {
    finalMass_kg: state[place.mass]!,
    time_s,
    orbit: orbitOf(state),
    settled: end.settled,
    controls: end.x,
  };
}

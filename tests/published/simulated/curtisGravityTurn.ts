import { Ascent } from '../../../src/refly/ascent.ts';
import { carriedLedger } from '../../../src/refly/carriedLedger.ts';
import { alongPathHeading, alongPathPitch, held } from '../../../src/refly/controls.ts';
import { SteadyRecorder } from '../../../src/refly/recorder.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../../src/units/standardGravity.ts';
import type { World } from '../../../src/world/types.ts';
import type { SimulatedFlight } from './simulatedFlight.ts';
import { eventOf, logOf, sampled } from './simulatedFlight.ts';

// Curtis, Orbital Mechanics for Engineering Students, example 11.3 / 13.3: the book's own inputs.
const gravity_m_s2 = 9.81;
const radius_m = 6378e3;
const fullMass_kg = 149912 * 0.4536;
const thrust_N = 1.4 * fullMass_kg * gravity_m_s2;
const isp_s = (390 * gravity_m_s2) / STANDARD_GRAVITY_M_S2;
const area_m2 = (Math.PI / 4) * (196.85 * 0.0254) ** 2;
const dragCoefficient = 0.5;
const massRatio = 15;
const propellant_kg = fullMass_kg * (1 - 1 / massRatio);
const pitchOverAltitude_m = 130;
const pitchOverAngle_rad = (89.85 * Math.PI) / 180;
const surfaceDensity_kg_m3 = 1.225;
const scaleHeight_m = 7500;
const surfacePressure_Pa = 101325;
const airTop_m = 400e3;

const world: World = {
  name: 'Earth of the example',
  mu_m3_s2: gravity_m_s2 * radius_m ** 2,
  radius_m,
  spin_rad_s: 0,
  orbitFloor_m: airTop_m,
  ellipsoid: null,
  source: 'textbook case',
  atmosphere: {
    model: 'exponential',
    source: 'textbook case',
    top_m: airTop_m,
    at: (altitude_m, into = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 340 }) => {
      const part = altitude_m < airTop_m ? Math.exp(-altitude_m / scaleHeight_m) : 0;
      into.density_kg_m3 = surfaceDensity_kg_m3 * part;
      into.pressure_Pa = surfacePressure_Pa * part;
      into.soundSpeed_m_s = Math.sqrt((1.4 * surfacePressure_Pa) / surfaceDensity_kg_m3);
      return into;
    },
  },
};

/** What the book's table gives beside the losses. */
interface Burnout {
  readonly pitchOver_s: number;
  readonly flightPathAngle_deg: number;
  readonly altitude_m: number;
  readonly downrange_m: number;
  readonly maxDynamicPressure_Pa: number;
  readonly maxDynamicPressure_s: number;
}

/**
 * The gravity turn of Curtis' example with mass ratio 15: vertical to 130 m, then the path is tilted to 89.85°
 * at one stroke and thrust follows it until burnout; a coast of 80 s follows.
 */
export function simulateCurtisGravityTurn(): SimulatedFlight & { burnout: Burnout } {
  const stage = {
    name: 'rocket',
    dryMass_kg: fullMass_kg - propellant_kg,
    propellantMass_kg: propellant_kg,
    thrustVacuum_N: thrust_N,
    ispVacuum_s: isp_s,
    exitArea_m2: 0,
  };
  const ascent = new Ascent(
    world,
    {
      payload_kg: 0,
      jettisons: [],
      stages: [{ ...stage, dragArea: () => dragCoefficient * area_m2, thrustCurve: null, boosters: [] }],
    },
    { relativeTolerance: 1e-11 },
  );
  const east = Math.PI / 2;
  const rise = new SteadyRecorder(sampled, 0.1);
  const vertical = ascent.fly(
    {
      start: {
        kind: 'pad',
        latitude_rad: 0,
        longitude_rad: 0,
        altitude_m: 0,
        course_rad: east,
        holdDown_s: 0,
      },
      controls: { throttle: held(1), pitch: held(east), heading: held(east) },
      steps: [
        {
          do: 'burn',
          until: { kind: 'condition', value: (s) => s.altitude_m - pitchOverAltitude_m, direction: 1 },
        },
      ],
    },
    rise,
  );
  const top = ascent.observe(vertical.time_s, vertical.state);
  const start = {
    kind: 'flight' as const,
    time_s: vertical.time_s,
    latitude_rad: 0,
    longitude_rad: 0,
    altitude_m: top.altitude_m,
    speed_m_s: top.speed_m_s,
    flightPathAngle_rad: pitchOverAngle_rad,
    course_rad: east,
    stage: 0,
    stagePropellant_kg: top.stagePropellant_kg,
    mass_kg: top.mass_kg,
  };
  const turn = new SteadyRecorder(sampled, 0.1, Math.ceil(vertical.time_s * 10) / 10);
  const flown = ascent.fly(
    {
      start,
      controls: { throttle: held(1), pitch: alongPathPitch, heading: alongPathHeading },
      steps: [
        { do: 'burn', until: { kind: 'empty' } },
        { do: 'coast', until: { kind: 'duration', duration_s: 80 } },
      ],
    },
    turn,
  );
  const out = eventOf(flown, 'cutoff');
  const first = carriedLedger(world, eventOf(vertical, 'ignition').state, vertical.state, 'ground');
  const second = carriedLedger(world, eventOf(flown, 'ignition').state, out.state, 'ground');
  const end = ascent.observe(out.time_s, out.state);
  const columns = turn.columns();
  const q = columns.dynamicPressure_Pa;
  const most = q.indexOf(Math.max(...q));
  const sum = (name: 'ideal' | 'steering' | 'drag' | 'gravity') => first[name] + second[name];
  return {
    log: logOf(rise.columns(), columns),
    card: JSON.stringify({
      mission: 'textbook gravity turn',
      world: {
        name: world.name,
        gravitationalParameter_m3_s2: world.mu_m3_s2,
        radius_m,
        atmosphere: {
          model: 'exponential',
          surfacePressure_Pa,
          surfaceDensity_kg_m3,
          scaleHeight_m,
          top_m: airTop_m,
          heatCapacityRatio: 1.4,
        },
      },
      site: { latitude_deg: 0, launchAzimuth_deg: 90 },
      target: { kind: 'suborbital', peakAltitude_m: 500000 },
      vehicle: { payload_kg: 0, stages: [{ ...stage, referenceArea_m2: area_m2, dragCoefficient }] },
    }),
    burnout_s: out.time_s,
    truth: {
      ideal: sum('ideal'),
      steering: sum('steering'),
      drag: sum('drag'),
      gravity: sum('gravity'),
      speed: end.speed_m_s,
    },
    burnout: {
      pitchOver_s: vertical.time_s,
      flightPathAngle_deg: (end.flightPathAngle_rad * 180) / Math.PI,
      altitude_m: end.altitude_m,
      downrange_m: end.longitude_rad * radius_m,
      maxDynamicPressure_Pa: q[most]!,
      maxDynamicPressure_s: columns.time_s[most]!,
    },
  };
}

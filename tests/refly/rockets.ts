import type { Rocket, RocketStage } from '../../src/refly/rocket.ts';
import type { Atmosphere, World } from '../../src/world/types.ts';

/** Small invented worlds and rockets that the tests of this room share. */
export function worldOf(spin_rad_s: number, atmosphere: Atmosphere | null = null): World {
  return {
    name: 'test world',
    mu_m3_s2: 4e13,
    radius_m: 3e6,
    spin_rad_s,
    orbitFloor_m: 0,
    ellipsoid: null,
    atmosphere,
    source: 'test',
  };
}

/** Exponential air of 80 kPa and 1 kg/m³ up to a top. */
export function airTo(top_m: number): Atmosphere {
  return {
    model: 'exponential',
    source: 'test',
    top_m,
    at: (altitude_m, into = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 }) => {
      const part = altitude_m < top_m ? Math.exp(-altitude_m / 8000) : 0;
      into.pressure_Pa = 80000 * part;
      into.density_kg_m3 = part;
      into.soundSpeed_m_s = 330;
      return into;
    },
  };
}

export function stageOf(more: Partial<RocketStage> = {}): RocketStage {
  return {
    name: 'stage',
    dryMass_kg: 1000,
    propellantMass_kg: 9000,
    thrustVacuum_N: 150000,
    ispVacuum_s: 300,
    exitArea_m2: 0.1,
    dragArea: () => 1,
    thrustCurve: null,
    boosters: [],
    ...more,
  };
}

export function rocketWith(stages: readonly RocketStage[], jettisons: Rocket['jettisons'] = []): Rocket {
  return { payload_kg: 500, stages, jettisons };
}

/** A pad on the equator, launch to the east. */
export function padStart(holdDown_s = 0) {
  return {
    kind: 'pad' as const,
    latitude_rad: 0,
    longitude_rad: 0,
    altitude_m: 0,
    course_rad: Math.PI / 2,
    holdDown_s,
  };
}

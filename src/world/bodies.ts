import { LossbookError } from '../errors.ts';
import { suggestion } from '../suggest.ts';
import { MARS_COSPAR_MEAN } from './atmosphere/marsCospar.ts';
import { US_STANDARD_ATMOSPHERE_1976 } from './atmosphere/usStandard1976.ts';
import type { World } from './types.ts';
import { worldNames } from './worldNames.ts';

/** WGS 84 gravitational parameter and equatorial radius. */
const WGS84_EARTH_GM_M3_S2 = 3.986004418e14;
const WGS84_EARTH_RADIUS_M = 6378137;
/** Mean sidereal day, s. */
const EARTH_SIDEREAL_DAY_S = 86164.0905;
/** JPL DE440 (gm_de440.tpc), to the digits that a double can hold. */
const DE440_MOON_GM_M3_S2 = 4.90280011845755e12;
const DE440_MARS_GM_M3_S2 = 4.282837362069909e13;
/** IAU (pck00011.tpc): mean radius of the Moon, equatorial radius of Mars; spin in degrees a day. */
const IAU_MOON_RADIUS_M = 1737400;
const IAU_MARS_EQUATORIAL_RADIUS_M = 3396190;
const IAU_MOON_SPIN_DEG_DAY = 13.17635815;
const IAU_MARS_SPIN_DEG_DAY = 350.891982443297;

function spin_rad_s(degPerDay: number): number {
  return (degPerDay * Math.PI) / 180 / 86400;
}

/** By convention an orbit of Earth stays above this; a low one still decays. */
export const EARTH_ORBIT_FLOOR_M = 120000;

/** Spherical Earth with WGS 84's equatorial radius and the U.S. Standard Atmosphere, 1976. */
export const EARTH: World = {
  name: 'Earth',
  mu_m3_s2: WGS84_EARTH_GM_M3_S2,
  radius_m: WGS84_EARTH_RADIUS_M,
  spin_rad_s: (2 * Math.PI) / EARTH_SIDEREAL_DAY_S,
  orbitFloor_m: EARTH_ORBIT_FLOOR_M,
  ellipsoid: null,
  atmosphere: US_STANDARD_ATMOSPHERE_1976,
  source:
    'WGS 84 gravitational parameter and equatorial radius, sidereal day of 86,164.0905 s; orbit floor 120 km by convention',
};

/** Spherical Moon. The floor clears its highest ground, 10.8 km above the mean sphere (LRO, 2010). */
export const MOON: World = {
  name: 'Moon',
  mu_m3_s2: DE440_MOON_GM_M3_S2,
  radius_m: IAU_MOON_RADIUS_M,
  spin_rad_s: spin_rad_s(IAU_MOON_SPIN_DEG_DAY),
  orbitFloor_m: 15000,
  ellipsoid: null,
  atmosphere: null,
  source:
    'JPL DE440 gravitational parameter, IAU mean radius and spin (NAIF pck00011); orbit floor 15 km, a clearance of 4 km over the highest ground',
};

/** Spherical Mars with its equatorial radius. The floor is the top of the table of its air. */
export const MARS: World = {
  name: 'Mars',
  mu_m3_s2: DE440_MARS_GM_M3_S2,
  radius_m: IAU_MARS_EQUATORIAL_RADIUS_M,
  spin_rad_s: spin_rad_s(IAU_MARS_SPIN_DEG_DAY),
  orbitFloor_m: MARS_COSPAR_MEAN.top_m,
  ellipsoid: null,
  atmosphere: MARS_COSPAR_MEAN,
  source:
    'JPL DE440 gravitational parameter, IAU equatorial radius and spin (NAIF pck00011); orbit floor at the top of the table of its air',
};

const worlds: Readonly<Record<string, World>> = { earth: EARTH, moon: MOON, mars: MARS };

/**
 * A world by name, case ignored.
 * @throws LossbookError world-unknown, with the nearest name.
 */
export function worldByName(name: string): World {
  const key = name.trim().toLowerCase();
  const world = Object.hasOwn(worlds, key) ? worlds[key] : undefined;
  if (world === undefined) {
    throw new LossbookError('world-unknown', { world: name, suggestion: suggestion(key, worldNames) });
  }
  return world;
}

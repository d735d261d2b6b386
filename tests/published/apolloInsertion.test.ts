import { describe, expect, test } from 'vitest';
import { elementsFromState, inclinationFromHeading } from '../../src/orbit/elements.ts';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';

/** Fischer ellipsoid of 1960 and the gravitational parameter of the time, as the evaluation reports use them. */
const FISCHER_1960_RADIUS_M = 6_378_166;
const FISCHER_1960_FLATTENING = 1 / 298.3;
const REPORT_EARTH_MU = 3.986032e14;
/** Sphere from which the reports count apogee and perigee. */
const REPORT_SPHERE_M = 6_378_165;
const FOOT_M = 0.3048;
const NAUTICAL_MILE_M = 1852;
const DEGREE = Math.PI / 180;

/** Distance of the ellipsoid's surface from the centre at a geocentric latitude. */
function surfaceRadius_m(latitude_rad: number): number {
  const polar = FISCHER_1960_RADIUS_M * (1 - FISCHER_1960_FLATTENING);
  return polar / Math.hypot((1 - FISCHER_1960_FLATTENING) * Math.cos(latitude_rad), Math.sin(latitude_rad));
}

/**
 * Orloff, Apollo by the Numbers (NASA SP-2000-4029), table “Earth orbit data”. Null: entries that the state beside
 * them does not give (faults of print, or not osculating). Apollo 12's latitude is printed 31.5128; with 32.5128
 * all its other entries follow.
 */
const insertions = [
  {
    flight: 8,
    altitude_ft: 627_819,
    speed_ft_s: 25_567.06,
    path_deg: 0.0006,
    latitude_deg: 32.4741,
    heading_deg: 88.532,
    apogee_nmi: 99.99,
    perigee_nmi: 99.57,
    inclination_deg: 32.509,
    period_min: 88.19,
    eccentricity: 0.00006,
  },
  {
    flight: 11,
    altitude_ft: 626_909,
    speed_ft_s: 25_567.9,
    path_deg: 0.012,
    latitude_deg: 32.5027,
    heading_deg: 88.848,
    apogee_nmi: 100.4,
    perigee_nmi: 98.9,
    inclination_deg: 32.521,
    period_min: 88.18,
    eccentricity: 0.00021,
  },
  {
    flight: 12,
    altitude_ft: 626_360,
    speed_ft_s: 25_565.9,
    path_deg: -0.014,
    latitude_deg: 32.5128,
    heading_deg: 88.58,
    apogee_nmi: 100.1,
    perigee_nmi: 97.8,
    inclination_deg: 32.54,
    period_min: 88.16,
    eccentricity: 0.00032,
  },
  {
    flight: 16,
    altitude_ft: 567_371,
    speed_ft_s: 25_605.0,
    path_deg: 0.001,
    latitude_deg: 32.5262,
    heading_deg: 88.932,
    apogee_nmi: null,
    perigee_nmi: 90.0,
    inclination_deg: 32.542,
    period_min: null,
    eccentricity: null,
  },
];

describe.each(insertions)('Apollo $flight, earth orbit insertion', (row) => {
  const latitude = row.latitude_deg * DEGREE;
  const speed = row.speed_ft_s * FOOT_M;
  const path = row.path_deg * DEGREE;
  const radius = surfaceRadius_m(latitude) + row.altitude_ft * FOOT_M;
  const orbit = orbitFromPlanarState(REPORT_EARTH_MU, radius, speed * Math.sin(path), speed * Math.cos(path));

  test('apogee, perigee, period, eccentricity and inclination as printed', () => {
    const apogee = (orbit.apoapsisRadius_m - REPORT_SPHERE_M) / NAUTICAL_MILE_M;
    const perigee = (orbit.periapsisRadius_m - REPORT_SPHERE_M) / NAUTICAL_MILE_M;
    if (row.apogee_nmi !== null) expect(Math.abs(apogee - row.apogee_nmi)).toBeLessThan(0.1);
    expect(Math.abs(perigee - row.perigee_nmi)).toBeLessThan(0.1);
    if (row.period_min !== null)
      expect(Math.abs((orbit.period_s ?? Number.NaN) / 60 - row.period_min)).toBeLessThan(0.01);
    // Printed to five decimals, from speeds good to about as much.
    if (row.eccentricity !== null) expect(Math.abs(orbit.eccentricity - row.eccentricity)).toBeLessThan(2e-5);
    const inclination = inclinationFromHeading(latitude, row.heading_deg * DEGREE) / DEGREE;
    expect(Math.abs(inclination - row.inclination_deg)).toBeLessThan(0.01);
  });
});

test('heights above a sphere instead of the ellipsoid miss Apollo 11 by some nine nautical miles', () => {
  const speed = 25_567.9 * FOOT_M;
  const path = 0.012 * DEGREE;
  const radius = REPORT_SPHERE_M + 626_909 * FOOT_M;
  const orbit = orbitFromPlanarState(REPORT_EARTH_MU, radius, speed * Math.sin(path), speed * Math.cos(path));
  expect((orbit.apoapsisRadius_m - REPORT_SPHERE_M) / NAUTICAL_MILE_M).toBeCloseTo(109.7, 1);
  expect((orbit.periapsisRadius_m - REPORT_SPHERE_M) / NAUTICAL_MILE_M).toBeCloseTo(103.1, 1);
});

/**
 * Apollo 11, Saturn V flight evaluation report MPR-SAT-FE-69-9 (1969), table 10-2: postflight and guidance
 * computer states, m and m/s. Speed and path angle are each row's own. Eccentricity, heights and C3 from the
 * report's insertion and injection tables, where the state gives them.
 */
const states = [
  {
    name: 'postflight, insertion',
    r: [5_856_252, 93_832, 2_961_276],
    v: [-3515.97, 76.9, 6954.42],
    radius: 6_563_052,
    speed: 7793.07,
    path_deg: 0.01205,
    eccentricity: 0.00021,
    apogee_km: 186.0,
    perigee_km: 183.2,
    c3: null,
  },
  {
    name: 'guidance computer, insertion',
    r: [5_856_709, 92_552, 2_961_037],
    v: [-3517.14, 75.69, 6954.08],
    radius: 6_563_334,
    speed: 7793.28,
    path_deg: -0.00064,
    eccentricity: 0.00007,
    apogee_km: null,
    perigee_km: null,
    c3: null,
  },
  {
    name: 'postflight, first stage cutoff',
    r: [6_437_247, 39_441, 159_164],
    v: [839.62, 123.11, 2630.64],
    radius: 6_439_335,
    speed: 2764.13,
    path_deg: 19.1143,
    eccentricity: null,
    apogee_km: null,
    perigee_km: null,
    c3: null,
  },
  {
    name: 'postflight, second stage cutoff',
    r: [6_289_873, 80_367, 1_859_720],
    v: [-1891.43, 90.43, 6651.87],
    radius: 6_559_537,
    speed: 6916.14,
    path_deg: 0.6075,
    eccentricity: null,
    apogee_km: null,
    perigee_km: null,
    c3: null,
  },
  {
    name: 'postflight, third stage cutoff',
    r: [5_890_834, 93_058, 2_892_017],
    v: [-3432.48, 78.03, 6993.87],
    radius: 6_563_105,
    speed: 7791.17,
    path_deg: 0.01511,
    eccentricity: null,
    apogee_km: null,
    perigee_km: null,
    c3: null,
  },
  {
    name: 'postflight, translunar injection',
    r: [4_901_502, -59_131, -4_585_002],
    v: [8351.74, 410.04, 6889.31],
    radius: 6_711_964,
    speed: 10_834.31,
    path_deg: 7.36695,
    eccentricity: 0.97696,
    apogee_km: null,
    perigee_km: null,
    c3: -1_391_607,
  },
  {
    name: 'guidance computer, translunar injection',
    r: [4_920_373, -57_507, -4_566_438],
    v: [8332.21, 410.24, 6910.34],
    radius: 6_713_101,
    speed: 10_832.68,
    path_deg: 7.44149,
    eccentricity: 0.9767,
    apogee_km: null,
    perigee_km: null,
    c3: -1_406_545,
  },
] as const;

test.each(states)('Apollo 11 $name: the state’s own radius, speed, path angle and orbit', (row) => {
  const [x, y, z] = row.r;
  const [vx, vy, vz] = row.v;
  const radius = Math.hypot(x, y, z);
  const speed = Math.hypot(vx, vy, vz);
  const up = (x * vx + y * vy + z * vz) / radius;
  expect(Math.abs(radius - row.radius)).toBeLessThan(1.5);
  expect(Math.abs(speed - row.speed)).toBeLessThan(0.015);
  // Coordinates to 1 m and speeds to 0.01 m/s leave some 2e-5 degrees.
  expect(Math.abs(Math.asin(up / speed) / DEGREE - row.path_deg)).toBeLessThan(1e-4);
  const planar = orbitFromPlanarState(REPORT_EARTH_MU, radius, up, Math.sqrt(speed * speed - up * up));
  const elements = elementsFromState(REPORT_EARTH_MU, { position_m: [x, y, z], velocity_m_s: [vx, vy, vz] });
  expect(elements.eccentricity).toBeCloseTo(planar.eccentricity, 10);
  // Printed to five decimals; a centimetre per second is 3e-6.
  if (row.eccentricity !== null)
    expect(Math.abs(planar.eccentricity - row.eccentricity)).toBeLessThan(1.5e-5);
  if (row.apogee_km !== null)
    expect(Math.abs((planar.apoapsisRadius_m - REPORT_SPHERE_M) / 1e3 - row.apogee_km)).toBeLessThan(0.06);
  if (row.perigee_km !== null)
    expect(Math.abs((planar.periapsisRadius_m - REPORT_SPHERE_M) / 1e3 - row.perigee_km)).toBeLessThan(0.06);
  // 0.01 m/s at 10.8 km/s is 217 m²/s²; the computer's state was printed coarser than it was used.
  if (row.c3 !== null) expect(Math.abs(2 * planar.energy_J_kg - row.c3)).toBeLessThan(500);
});

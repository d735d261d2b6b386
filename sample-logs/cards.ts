/** The invented vehicles, worlds and missions of the sample flights, as mission cards. */

const bobstayDrag = [
  [0, 0.36],
  [0.6, 0.36],
  [0.85, 0.414],
  [1.05, 0.62],
  [1.3, 0.5766],
  [2, 0.46],
  [4, 0.3],
];

const osselby = {
  name: 'Osselby',
  gravitationalParameter_m3_s2: 6.8231e13,
  radius_m: 3100000,
  rotationPeriod_s: 52000,
  atmosphere: {
    model: 'exponential',
    surfacePressure_Pa: 78000,
    surfaceDensity_kg_m3: 1,
    scaleHeight_m: 8600,
    top_m: 110000,
    heatCapacityRatio: 1.4,
  },
};

const threnby = {
  name: 'Threnby',
  surfaceGravity_m_s2: 1.1,
  radius_m: 540000,
  rotationPeriod_s: 410000,
  orbitFloor_m: 8000,
  atmosphere: null,
};

interface Flown {
  readonly pilot: string;
  readonly attempt: number;
  readonly date: string;
  readonly notes: string;
}

const invented = 'Invented flight: computed, not flown.';

/** Bobstay: two stages, from Osselby to a circular orbit at 160 km. */
export function bobstayCard(payload_kg: number, flight: Flown) {
  return {
    mission: 'Long Ladder',
    world: osselby,
    site: { latitude_deg: 5, longitude_deg: 12.5, altitude_m: 0, launchAzimuth_deg: 90 },
    target: { kind: 'orbit', apoapsisAltitude_m: 160000, periapsisAltitude_m: 160000 },
    vehicle: {
      name: 'Bobstay',
      payload_kg,
      stages: [
        {
          name: 'lower',
          dryMass_kg: 4500,
          propellantMass_kg: 42000,
          thrustVacuum_N: 700000,
          ispVacuum_s: 285,
          exitArea_m2: 0.62,
          referenceArea_m2: 5.3,
          dragCoefficient: bobstayDrag,
        },
        {
          name: 'upper',
          dryMass_kg: 1500,
          propellantMass_kg: 8500,
          thrustVacuum_N: 86000,
          ispVacuum_s: 335,
          exitArea_m2: 0.48,
          referenceArea_m2: 5.3,
          dragCoefficient: bobstayDrag,
        },
      ],
    },
    limits: { dynamicPressure_Pa: 35000, acceleration_m_s2: 45 },
    flight: { ...flight, notes: `${flight.notes} ${invented}` },
  };
}

/** The Bobstay with a capsule for a payload, which comes home under two parachutes. */
export function homewardCard(flight: Flown) {
  const { vehicle, ...card } = bobstayCard(1900, flight);
  return {
    ...card,
    mission: 'Long Ladder, there and back',
    vehicle,
    return: {
      mass_kg: 1900,
      referenceArea_m2: 6.2,
      dragCoefficient: 1.25,
      noseRadius_m: 1.6,
      parachutes: [{ count: 2, dragArea_m2: 270, openAltitude_m: 6000, fullAltitude_m: 3000 }],
    },
  };
}

/** Fairlead: a core with four strap-ons, an upper stage and a fairing, from Earth to 200 km. */
export function fairleadCard(flight: Flown) {
  const drag = [
    [0, 0.32],
    [0.7, 0.33],
    [1.05, 0.58],
    [1.6, 0.5],
    [3, 0.36],
    [6, 0.28],
  ];
  return {
    mission: 'Soft Gate',
    world: 'earth',
    site: { latitude_deg: 12.2, longitude_deg: -61.5, altitude_m: 0, launchAzimuth_deg: 90 },
    target: { kind: 'orbit', apoapsisAltitude_m: 200000, periapsisAltitude_m: 200000 },
    vehicle: {
      name: 'Fairlead',
      payload_kg: 6000,
      stages: [
        {
          name: 'core',
          dryMass_kg: 9500,
          propellantMass_kg: 110000,
          thrustVacuum_N: 1350000,
          ispVacuum_s: 315,
          exitArea_m2: 2.5,
          referenceArea_m2: 22,
          dragCoefficient: drag,
          boosters: [
            {
              name: 'strap-on',
              count: 4,
              dryMass_kg: 3500,
              propellantMass_kg: 38000,
              thrustVacuum_N: 900000,
              ispVacuum_s: 275,
              exitArea_m2: 0.9,
              ignitionTime_s: 0,
              separationTime_s: 117,
            },
          ],
        },
        {
          name: 'upper',
          dryMass_kg: 3200,
          propellantMass_kg: 26000,
          thrustVacuum_N: 240000,
          ispVacuum_s: 345,
          exitArea_m2: 2.2,
          referenceArea_m2: 11,
          dragCoefficient: drag,
        },
      ],
      jettisons: [{ name: 'fairing', mass_kg: 1900, altitude_m: 112000 }],
    },
    limits: { dynamicPressure_Pa: 40000, acceleration_m_s2: 45 },
    flight: { ...flight, notes: `${flight.notes} ${invented}` },
  };
}

/** Thimble: a lander that climbs from airless Threnby to 30 km. */
export function thimbleCard(flight: Flown) {
  return {
    mission: 'Low Lantern',
    world: threnby,
    site: { latitude_deg: 2, longitude_deg: 40, altitude_m: 0, launchAzimuth_deg: 90 },
    target: { kind: 'orbit', apoapsisAltitude_m: 30000, periapsisAltitude_m: 30000 },
    vehicle: {
      name: 'Thimble',
      payload_kg: 150,
      stages: [
        {
          name: 'lander',
          dryMass_kg: 900,
          propellantMass_kg: 500,
          thrustVacuum_N: 3600,
          ispVacuum_s: 300,
          exitArea_m2: 0.05,
          throttleMin: 0.4,
        },
      ],
    },
    flight: { ...flight, notes: `${flight.notes} ${invented}` },
  };
}

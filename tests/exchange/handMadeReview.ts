import type { Basis, Figure, LedgerEntries, Review } from '../../src/review/types.ts';

/** A figure with an even interval. */
export function figure(value: number, half: number, basis: Basis = 'derived'): Figure {
  return { value, low: value - half, high: value + half, basis };
}

/** A figure that could not be had. */
export function unavailable(reason: string): Figure {
  return { value: null, low: null, high: null, basis: 'unavailable', reason };
}

function entries(frame: Figure, gravity: number): LedgerEntries {
  return {
    ideal: figure(5541.2, 3),
    backPressure: figure(51.1, 1.2),
    steering: {
      ...figure(282.4, 1.3),
      assumptions: [{ what: 'heading unseen', low: 272.4, high: 282.4 }],
    },
    drag: { value: 87, low: 86, high: 95, basis: 'identified' },
    gravity: figure(gravity, 5),
    frame,
    holdDown: figure(0, 0),
    speedGained: figure(3842.1, 15, 'measured'),
    unexplained: figure(0.4, 0.2),
  };
}

/** A review written by hand: an invented flight of the Bobstay that missed its orbit by 361 m/s. */
export function handMadeReview(): Review {
  return {
    schema: 'lossbook-review/1',
    source: {
      file: 'bobstay-medlar-4.csv',
      rows: 5398,
      start_s: 0,
      end_s: 539.7,
      rate_Hz: 10,
      part: 1,
      parts: 1,
      liftOffLogTime_s: 0,
      card: 'bobstay-medlar-4.mission.json',
      plan: null,
    },
    mission: {
      name: 'Long Ladder',
      world: 'Osselby',
      worldSource: 'mission card',
      orbitFloor_m: 110_000,
      constants: {
        gravitationalParameter_m3_s2: 6.86e13,
        radius_m: 3_100_000,
        radiusAtSite_m: 3_100_000,
        spin_rad_s: 1.208e-4,
        airTop_m: 110_000,
      },
      site: { latitude_deg: 5, longitude_deg: null, launchAzimuth_deg: 90 },
      target: 'orbit 160 × 160 km ± 8 km',
      targetOrbit: { apoapsisAltitude_m: 160_000, periapsisAltitude_m: 160_000 },
      vehicle: 'Bobstay',
      payload_kg: 6200,
      pilot: 'Medlar',
      attempt: 4,
      date: null,
      notes: null,
      assumed: ['The ascending node is free, because the card names none.'],
    },
    vehicle: null,
    channels: [
      {
        channel: 'altitude',
        column: 'Altitude [ft]',
        columnIndex: 1,
        unit: 'ft',
        factor: 0.3048,
        offset: 0,
        unitFrom: 'header',
        confidence: 0.97,
        reason: 'the header says altitude and ft',
        missing: 0,
      },
    ],
    quality: [
      {
        code: 'gap',
        channel: 'speed',
        rows: [120, 131],
        count: 12,
        text: 'no value for 1.1 s; bridged, which widens the intervals.',
      },
    ],
    events: [
      { name: 'lift-off', time_s: 0, planned_s: null, subject: null, altitude_m: 0, speed_m_s: 0 },
      {
        name: 'separation',
        time_s: 167.6,
        planned_s: null,
        subject: 'lower',
        altitude_m: 83_500,
        speed_m_s: 1890,
      },
    ],
    phases: [{ name: 'rise', start_s: 0, end_s: 14, label: 'rise' }],
    ledger: {
      start_s: 0,
      end_s: 494.3,
      ground: entries(figure(-8.7, 0.1), 1288.2),
      inertial: entries(unavailable('the inertial frame has no frame entry'), 1290.6),
      rotationHelp: figure(359.1, 0.4),
      headingReading: 'Thrust is read as holding the launch azimuth by compass; the ledger closes better so.',
    },
    orbit: {
      atCutoff: {
        apoapsisAltitude_m: figure(171_240, 310),
        periapsisAltitude_m: figure(-662_400, 2100),
        eccentricity: figure(0.14583, 0.0004),
        inclination_deg: unavailable('the log has neither position nor heading'),
        semiMajorAxis_m: figure(2_854_000, 900),
        period_s: figure(3667, 2),
      },
      cutoff_s: 494.3,
    },
    budget: {
      deltaVSpent: figure(5541.2, 3),
      deltaVToGo: figure(361.3, 15),
      deltaVRemaining: figure(0, 0, 'measured'),
      vehicleDeltaV: figure(5541.2, 3),
      projectedTotal: figure(5902.5, 15),
      margin: figure(-361.3, 15),
      shortfall: figure(361.3, 15),
      propellantLeft_kg: figure(0, 3, 'measured'),
      lostAt_s: 123.4,
      curves: {
        time_s: [0, 60, 123.4, 170, 494.3],
        spent: [0, 1200, 2200, 3200, 5541],
        toGo: [4400, 3700, 3341, 2700, 361],
        projectedTotal: [4400, 4900, 5541, 5900, 5902],
        margin: [1106, 480, 0, -240, -361],
      },
      band: {
        toGo: { low: [4399, 3698, 3338, 2690, 346.3], high: [4401, 3702, 3344, 2710, 376.3] },
        projectedTotal: { low: [4399, 4897, 5537, 5889, 5887.5], high: [4401, 4903, 5545, 5911, 5917.5] },
        margin: { low: [1086, 462, -14, -254, -376.3], high: [1126, 498, 14, -226, -346.3] },
      },
    },
    burns: [
      {
        start_s: 0,
        end_s: 167.2,
        stage: 'lower',
        ascent: true,
        deltaV: figure(3104.2, 2),
        efficiency: figure(0.61, 0.01),
        propellant_kg: figure(42_000, 30),
      },
      {
        start_s: 600,
        end_s: 612,
        stage: 'upper',
        ascent: false,
        deltaV: figure(40, 2),
        efficiency: unavailable('it is not part of the ascent'),
        propellant_kg: figure(90, 3),
      },
    ],
    derivation: [
      {
        quantity: 'flight-path angle',
        basis: 'derived',
        how: 'altitude’s rate over speed, smoothed over 2 s',
      },
      { quantity: 'drag', basis: 'identified', how: 'one drag area over Mach for the whole stack' },
    ],
    verdict: {
      code: 'suborbital-out-of-propellant',
      text: 'Not in orbit: 361 m/s short. Orbit was out of reach from 123 s at the latest.',
      detail: '171 × −662 km at cutoff, tanks dry.',
    },
    return: {
      code: 'not-logged',
      text: 'The log ends before the ground.',
      touchdownSpeed_m_s: unavailable('no'),
      touchdown_s: null,
      deorbit: null,
      impact: null,
      entry: null,
      parachute: null,
      descent: null,
      poweredLanding: null,
    },
    orbitWork: {
      burns: [],
      history: [],
      deltaV_m_s: unavailable('no burns in orbit'),
      optimum_m_s: unavailable('no burns in orbit'),
    },
    causesSought: true,
    findings: [
      {
        code: 'late-turn',
        start_s: 14,
        end_s: 168,
        cost_m_s: figure(310, 20),
        propellant_kg: figure(800, 60),
        text: 'The turn came late',
        evidence: 'Pitch was 52° at 40 km where the reference has 38°.',
        advice: 'Start the pitch-over at 80 m/s.',
      },
    ],
    whyNot: null,
    waste: null,
    againstPlan: null,
    cautions: ['For the review of simulated, educational and amateur flights after the fact.'],
  };
}

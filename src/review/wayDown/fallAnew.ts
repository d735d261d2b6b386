import type { Flight } from '../../flight/types.ts';
import { Ascent } from '../../refly/ascent.ts';
import { alongPathHeading, alongPathPitch, held } from '../../refly/controls.ts';

/** A place and time of a fall. Angles in rad. */
export interface FallEnd {
  readonly time_s: number;
  readonly latitude_rad: number;
  readonly longitude_rad: number;
}

/** Changes to the state or the body, for intervals. */
export interface FallChange {
  readonly speed_m_s?: number;
  readonly verticalSpeed_m_s?: number;
  readonly altitude_m?: number;
}

/** A fall is given up after this, s. */
const LONGEST_S = 40_000;

/**
 * Lets a body fall from the flight's state at axis point `i` by the equations of motion with drag until it comes
 * down through an altitude; null where it never does.
 *
 * @param dragPerMass_m2_kg CdA/m of the body; 0 = without drag
 */
export function fallAnew(
  flight: Flight,
  i: number,
  altitude_m: number,
  dragPerMass_m2_kg: number,
  change: FallChange = {},
): FallEnd | null {
  const { track } = flight;
  const up = flight.verticalSpeed[i]! + (change.verticalSpeed_m_s ?? 0);
  const across = Math.max(0, flight.horizontalSpeed[i]! + (change.speed_m_s ?? 0));
  const start = {
    kind: 'flight' as const,
    time_s: flight.time[i]!,
    latitude_rad: track.latitude[i]!,
    longitude_rad: track.longitude[i]!,
    altitude_m: flight.altitude[i]! + (change.altitude_m ?? 0),
    speed_m_s: Math.hypot(up, across),
    flightPathAngle_rad: Math.atan2(up, across),
    course_rad: track.course[i]!,
    stage: 0,
    stagePropellant_kg: 0,
    mass_kg: 1,
    // Land may lie below the level that altitudes count from.
    ground_m: Math.min(0, altitude_m - 1),
  };
  const body = {
    payload_kg: 1,
    stages: [
      {
        name: 'body',
        dryMass_kg: 0,
        propellantMass_kg: 0,
        thrustVacuum_N: 0,
        ispVacuum_s: 1,
        exitArea_m2: 0,
        dragArea: () => dragPerMass_m2_kg,
        thrustCurve: null,
        boosters: [],
      },
    ],
    jettisons: [],
  };
  const fall = new Ascent(flight.mission.world, body, { carryLosses: false, relativeTolerance: 1e-9 });
  const result = fall.fly({
    start,
    controls: { throttle: held(0), pitch: alongPathPitch, heading: alongPathHeading },
    steps: [
      {
        do: 'coast',
        until: {
          kind: 'condition',
          value: (s) => (s.time_s - start.time_s > LONGEST_S ? -1 : s.altitude_m - altitude_m),
          direction: -1,
        },
      },
    ],
  });
  if (result.end === 'stalled' || result.time_s - start.time_s > LONGEST_S) return null;
  const s = fall.observe(result.time_s, result.state);
  return { time_s: s.time_s, latitude_rad: s.latitude_rad, longitude_rad: s.longitude_rad };
}

import type { StateVector } from '../../orbit/kepler.ts';
import type { Analysis, StripName } from '../../review/types.ts';
import type { InertialFrame } from './frame.ts';

/** What a message is written from. */
export type Flown = Pick<Analysis, 'review' | 'strips'>;

const RAD = Math.PI / 180;
const needed = [
  'altitude_m',
  'latitude_deg',
  'longitude_deg',
  'verticalSpeed_m_s',
  'horizontalSpeed_m_s',
  'course_deg',
] as const satisfies readonly StripName[];

/**
 * Inertial states of a flight by the index of its rows: V = v + ω×r, with the east, north and up components turned
 * into the frame at the right ascension of the place. Null where a row lacks something.
 */
export function inertialStates(
  { review, strips }: Flown,
  frame: InertialFrame,
): (row: number) => StateVector | null {
  const [altitude, latitude, longitude, vertical, horizontal, course] = needed.map(
    (name) => strips.channels[name]?.values,
  );
  const { radiusAtSite_m, spin_rad_s } = review.mission.constants;
  return (row) => {
    const at = (values: Float64Array | undefined) => values?.[row] ?? Number.NaN;
    const radius = radiusAtSite_m + at(altitude);
    const phi = at(latitude) * RAD;
    const ascension = frame.meridian_rad + at(longitude) * RAD + spin_rad_s * at(strips.time_s);
    const across = at(horizontal);
    // A vehicle that stands or rises straight has no course, and needs none.
    const towards = across === 0 ? 0 : at(course) * RAD;
    const east = across * Math.sin(towards) + spin_rad_s * radius * Math.cos(phi);
    const north = across * Math.cos(towards);
    const up = at(vertical);
    const outward = up * Math.cos(phi) - north * Math.sin(phi);
    const state: StateVector = {
      position_m: [
        radius * Math.cos(phi) * Math.cos(ascension),
        radius * Math.cos(phi) * Math.sin(ascension),
        radius * Math.sin(phi),
      ],
      velocity_m_s: [
        outward * Math.cos(ascension) - east * Math.sin(ascension),
        outward * Math.sin(ascension) + east * Math.cos(ascension),
        up * Math.sin(phi) + north * Math.cos(phi),
      ],
    };
    return [...state.position_m, ...state.velocity_m_s].every(Number.isFinite) ? state : null;
  };
}

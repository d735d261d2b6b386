import type { Review } from '../../review/types.ts';
import { greenwichMeanSiderealAngle_rad } from '../../world/earthRotation.ts';
import type { Epoch } from './epoch.ts';

/** The inertial frame that states are written in; its third axis is the world's spin axis. */
export interface InertialFrame {
  /** Value of REF_FRAME. */
  readonly name: string;
  /** Angle of the meridian of longitude zero from the first axis at time zero, rad. */
  readonly meridian_rad: number;
  readonly remark: string;
}

/**
 * A frame that can be stated honestly: TEME where date, time of day and longitude on Earth are known, else one of
 * our own, defined by the launch.
 */
export function inertialFrame({ mission }: Review, epoch: Epoch): InertialFrame {
  const placed = mission.site.longitude_deg !== null;
  if (mission.world === 'Earth' && epoch.known === 'clock' && placed) {
    return {
      name: 'TEME',
      meridian_rad: greenwichMeanSiderealAngle_rad(epoch.unix_s),
      remark:
        'TEME by Greenwich mean sidereal time (IAU 1982) with UTC for UT1 and no polar motion, on a spherical Earth.',
    };
  }
  const where = placed ? 'of longitude zero' : 'of the launch site (its longitude is not known)';
  return {
    name: 'INERTIAL_AT_LIFTOFF',
    meridian_rad: 0,
    remark: `INERTIAL_AT_LIFTOFF does not turn: origin at the centre of ${mission.world}, Z along its spin axis, X in the equator through the meridian ${where} as it stands at lift-off.`,
  };
}

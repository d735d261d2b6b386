import type { Review } from '../../review/types.ts';
import { type Epoch, epochText } from './epoch.ts';
import type { InertialFrame } from './frame.ts';
import { comments, keyword, nameValue } from './kvn.ts';

/** When and by whom a message is written. */
export interface MessageOptions {
  /** UNIX time of writing, ms, for CREATION_DATE: the engine has no clock of its own. */
  readonly created_ms: number;
  /** Who answers for the message. Default `LOSSBOOK`. */
  readonly originator?: string;
}

/** Version line, remarks, CREATION_DATE and ORIGINATOR (CCSDS 502.0-B-2, tables 3-1 and 5-2). */
export function heading(
  kind: 'OEM' | 'OPM',
  { mission, source }: Review,
  { created_ms, originator = 'LOSSBOOK' }: MessageOptions,
  remarks: readonly string[],
): string[] {
  const known = [mission.name, mission.pilot, mission.attempt === null ? null : `attempt ${mission.attempt}`];
  const flight = known.filter((part) => part !== null).join(', ');
  return [
    keyword(`CCSDS_${kind}_VERS`, '2.0'),
    ...comments(
      `Written by lossbook from the flight log ${source.file}${flight === '' ? '' : ` (${flight})`}.`,
    ),
    ...remarks.flatMap(comments),
    keyword('CREATION_DATE', epochText(created_ms / 1000, 0).slice(0, 19)),
    keyword('ORIGINATOR', nameValue(originator)),
  ];
}

/** What a state belongs to: object, centre, frame and time system. */
export function subject({ mission, source }: Review, frame: InertialFrame): string[] {
  return [
    keyword('OBJECT_NAME', nameValue(mission.vehicle ?? mission.name ?? source.file)),
    keyword('OBJECT_ID', 'UNKNOWN'),
    keyword('CENTER_NAME', nameValue(mission.world)),
    keyword('REF_FRAME', frame.name),
    keyword('TIME_SYSTEM', 'UTC'),
  ];
}

/** Remarks that every message of a flight carries. */
export function flightRemarks({ mission }: Review, epoch: Epoch, frame: InertialFrame): string[] {
  const { constants, site } = mission;
  return [
    epoch.remark,
    frame.remark,
    ...(site.latitude_deg === null || site.launchAzimuth_deg === null
      ? ['The place or the direction of the launch is assumed, and with it the plane of the motion.']
      : []),
    `${mission.world}: GM ${constants.gravitationalParameter_m3_s2 / 1e9} km**3/s**2, radius ${constants.radius_m / 1000} km, spin ${constants.spin_rad_s} rad/s.`,
  ];
}

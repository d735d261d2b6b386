import { LossbookError } from '../errors.ts';
import { worldByName } from '../world/bodies.ts';
import { readClock } from './clock.ts';
import { knownWorld } from './oemMark.ts';
import { type Ephemeris, readOem } from './oemText.ts';
import { groundTrackOf, type Turning } from './oemTrack.ts';
import type { RawColumn, RawTable } from './rawTable.ts';
import type { QualityNote } from './types.ts';

/** The world that an ephemeris circles: what turns its positions into altitudes and its speeds to the ground's. */
export interface Centre {
  readonly name: string;
  /** Distance from the centre at altitude zero. */
  readonly radius_m: number;
  readonly spin_rad_s: number;
}

/**
 * The table of a flight that an ephemeris's states make over a turning world: altitude, speed over the ground,
 * vertical speed, course and place. Positions and velocities themselves are no channels of a flight log.
 * @param centre the world of the mission; without it the message's CENTER_NAME must be a known one
 * @throws LossbookError `oem-broken`, `oem-centre-unknown`.
 */
export function oemTable(text: string, file: string, centre: Centre | null): RawTable {
  const read = readOem(text, file);
  const world = centre ?? namedCentre(read.centre, file);
  const rows = read.epochs.length;
  const turning = turningOf(read, world);
  const track = groundTrackOf(read, turning);
  const column = (header: string, unitsCell: string, numbers: Float64Array): RawColumn => {
    return { header, unitsCell, numbers, texts: new Map() };
  };
  const time: RawColumn = {
    header: 'time',
    unitsCell: null,
    numbers: new Float64Array(rows).fill(Number.NaN),
    texts: new Map(read.epochs.map((epoch, i) => [i, epoch])),
  };
  return {
    form: 'oem',
    columns: [
      time,
      column(
        'altitude',
        'm',
        track.radius_m.map((r) => r - world.radius_m),
      ),
      column('speed', 'm/s', track.speed_m_s),
      column('vertical speed', 'm/s', track.verticalSpeed_m_s),
      column('course', 'rad', track.course_rad),
      column('latitude', 'rad', track.latitude_rad),
      column('longitude', 'rad', track.longitude_rad),
    ],
    rows,
    named: true,
    notes: [stateNote(read, world, turning), ...centreNotes(read, world), ...otherObjects(read)],
  };
}

function namedCentre(name: string, file: string): Centre {
  const known = knownWorld(name);
  if (known === null) throw new LossbookError('oem-centre-unknown', { centre: name }, { file });
  return worldByName(known);
}

/** Frames that turn with the world (CCSDS 502.0-B-2, annex A, and names in use beside it). */
const fixedFrame = /^(?:ITRF|GRC$|TDR$|ECEF|EFG|IAU_)|FIXED/u;
/** Inertial frames whose first axis is the equinox, for what matters here. */
const equinoxFrame = /^(?:TEME|TOD|MOD|EME2000|J2000|GCRF|ICRF)/u;

function turningOf({ frame, centre, timeSystem, epochs }: Ephemeris, { spin_rad_s }: Centre): Turning {
  const frameName = frame.toUpperCase();
  if (fixedFrame.test(frameName)) return { kind: 'fixed', spin_rad_s };
  const epoch = readClock(epochs[0] ?? '');
  const placed =
    knownWorld(centre) === 'earth' && equinoxFrame.test(frameName) && /^UT[C1]$/iu.test(timeSystem);
  return placed && epoch !== null
    ? { kind: 'equinox', spin_rad_s, start_unix_s: epoch.seconds }
    : { kind: 'inertial', spin_rad_s };
}

function stateNote({ frame, epochs }: Ephemeris, world: Centre, turning: Turning): QualityNote {
  const meridian = {
    fixed: '',
    equinox:
      ' The frame’s equator and equinox are taken for those of date, which moves places by up to 0.4° and speeds by up to 3 m/s where they are those of J2000.',
    inertial:
      ' The frame’s third axis is taken for the spin axis, and longitudes are counted from its first axis at the first epoch.',
  }[turning.kind];
  return {
    code: 'oem-states',
    channel: null,
    rows: null,
    count: epochs.length,
    text: `Altitude, speed over the ground, course and place follow from the states in ${frame} and the radius and spin of ${world.name}.${meridian}`,
  };
}

function centreNotes({ centre, epochs }: Ephemeris, world: Centre): QualityNote[] {
  const known = knownWorld(centre) ?? centre;
  if (known.toLowerCase() === world.name.toLowerCase()) return [];
  return [
    {
      code: 'oem-centre',
      channel: null,
      rows: null,
      count: epochs.length,
      text: `The ephemeris counts from the centre of ${centre}, but the mission’s world is ${world.name}, whose radius and spin are used.`,
    },
  ];
}

function otherObjects({ others, object }: Ephemeris): QualityNote[] {
  if (others.length === 0) return [];
  return [
    {
      code: 'oem-other-objects',
      channel: null,
      rows: null,
      count: others.length,
      text: `The message holds further objects (${others.slice(0, 5).join(', ')}); this is ${object}, its first.`,
    },
  ];
}

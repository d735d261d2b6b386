import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import type { Axis } from './axis.ts';
import type { RawBurn } from './burnEdges.ts';
import type { Kinematics } from './kinematics.ts';
import { localPolynomial } from './localPolynomial.ts';
import { controlOnAxis, filled } from './onAxis.ts';
import { finiteSamples } from './steps.ts';
import type { ThrustGaps } from './thrustGaps.ts';
import {
  courseFromPositions,
  greatCircleTrack,
  heldAzimuthTrack,
  loggedTrack,
  type TrackInput,
} from './track.ts';
import type { Derivation, GroundTrack } from './types.ts';

export interface TrackQuestion {
  readonly log: Log;
  /** Row times from lift-off. */
  readonly t: Float64Array;
  readonly axis: Axis;
  readonly mission: Mission;
  readonly path: Kinematics;
  readonly radius: Float64Array;
  readonly horizontalSpeed: Float64Array;
  readonly pitch: Float64Array | null;
  readonly burns: readonly RawBurn[];
}

export interface ChosenTracks {
  readonly track: GroundTrack;
  /** The other reading where the direction is not logged and both can be had. */
  readonly other: GroundTrack | null;
  readonly derivations: readonly Derivation[];
}

/**
 * The path's direction from what the log has: its course, its positions, its heading, or neither (METHODS §3). What
 * comes back answers for one reading of the engines after another.
 */
export function trackChooser(
  q: TrackQuestion,
): (gaps: ThrustGaps, reading?: 'held-azimuth' | 'great-circle') => ChosenTracks {
  const { log, t, axis, mission, path } = q;
  const onAxis = (name: 'heading' | 'course' | 'latitude' | 'longitude'): Float64Array | null =>
    controlOnAxis(axis, t, filled(t, log.channels[name]), q.burns);
  const heading = onAxis('heading');
  const input: TrackInput = {
    world: mission.world,
    time: axis.time,
    radius: q.radius,
    verticalSpeed: path.verticalSpeed,
    horizontalSpeed: q.horizontalSpeed,
    pitch: q.pitch,
    heading,
    course: onAxis('course'),
    latitude: onAxis('latitude'),
    longitude: onAxis('longitude'),
    thrustAcceleration: null,
    site: mission.site,
  };
  const logged = input.course ?? positionCourse(log, t, axis.time);
  if (logged !== null) {
    const chosen: ChosenTracks = {
      track: loggedTrack(input, logged),
      other: null,
      derivations: [
        {
          quantity: 'course',
          basis: log.channels.course ? 'measured' : 'derived',
          how: log.channels.course ? 'logged' : 'from the logged positions',
        },
      ],
    };
    return () => chosen;
  }
  const circle = greatCircleTrack(input);
  return (gaps, reading = 'held-azimuth') => {
    if (!gaps.known || q.pitch === null) {
      // Nothing shows how thrust turned the path: it lies between the circle's course and the azimuth held by compass.
      const azimuth = new Float64Array(axis.time.length).fill(mission.site.launchAzimuth_rad);
      const held = loggedTrack({ ...input, latitude: circle.latitude, longitude: circle.longitude }, azimuth);
      return {
        track: circle,
        other: { ...held, reading: 'held-azimuth' },
        derivations: [
          {
            quantity: 'course',
            basis: 'assumed',
            how: 'the ground track is taken to be the great circle from the site along the launch azimuth',
          },
        ],
      };
    }
    const held = heldAzimuthTrack({ ...input, thrustAcceleration: meanAcceleration(axis.time, gaps) });
    if (heading === null && reading === 'great-circle')
      return {
        track: circle,
        other: held,
        derivations: [
          {
            quantity: 'course',
            basis: 'assumed',
            how: 'the ground track is taken to be the great circle from the site along the launch azimuth, with thrust along it: the equation of motion closes better so than with thrust that holds the azimuth by compass',
          },
        ],
      };
    const how =
      heading === null
        ? 'thrust is taken to hold the launch azimuth by compass; the course follows from the equations of motion'
        : 'from the logged heading of the thrust axis by the equations of motion';
    return {
      track: held,
      other: heading === null ? circle : null,
      derivations: [{ quantity: 'course', basis: heading === null ? 'assumed' : 'derived', how }],
    };
  };
}

/** Mean thrust acceleration in each gap, m/s². */
function meanAcceleration(time: Float64Array, gaps: ThrustGaps): Float64Array {
  return gaps.vacuum.map((v, i) => {
    const dt = time[i + 1]! - time[i]!;
    return dt > 5e-6 ? (v - gaps.back[i]!) / dt : 0;
  });
}

function positionCourse(log: Log, t: Float64Array, query: Float64Array): Float64Array | null {
  const { latitude, longitude } = log.channels;
  if (latitude === undefined || longitude === undefined) return null;
  const lat = finiteSamples(t, latitude);
  const lon = finiteSamples(t, longitude);
  if (lat.t.length < 5 || lon.t.length < 5) return null;
  const step = (lat.t[lat.t.length - 1]! - lat.t[0]!) / (lat.t.length - 1);
  const options = { degree: 2, window_s: Math.max(2, 6 * step), minPoints: 5, breaks: [] } as const;
  const a = localPolynomial(lat.t, lat.y, query, options);
  const b = localPolynomial(lon.t, lon.y, query, options);
  return courseFromPositions(a.value, b.value, a.rate, b.rate);
}

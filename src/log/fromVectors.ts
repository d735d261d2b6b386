import { EARTH, MARS, MOON } from '../world/bodies.ts';
import { openingValue } from './opening.ts';
import type { ChannelName, ChannelReading, QualityNote } from './types.ts';

type Channels = Partial<Record<ChannelName, Float64Array>>;

/** Positions farther out than this are counted from a world's centre, not from a pad, m. */
const CENTRE_DISTANCE_M = 1e6;
/** A vehicle that moves slower than the ground of any known world turns may stand on it, m/s. */
const TURNING_GROUND_M_S = 470;
const HIGHEST_START_M = 3e6;

const positionNames = ['positionX', 'positionY', 'positionZ'] as const;
const velocityNames = ['velocityX', 'velocityY', 'velocityZ'] as const;

/**
 * Fills altitude, speed and vertical speed from logged positions and velocities where the log has none of its
 * own. Positions from a world's centre give the altitude above the pad where the log begins on it, else above
 * the radius of a known world; positions from the pad give it along the axis of the first motion.
 */
export function fillFromVectors(
  time: Float64Array,
  channels: Channels,
  readings: ChannelReading[],
  notes: QualityNote[],
): void {
  const position = components(channels, positionNames);
  const velocity = components(channels, velocityNames);
  const derive = (
    channel: ChannelName,
    values: Float64Array,
    from: readonly ChannelName[],
    how: string,
  ): void => {
    channels[channel] = values;
    const sources = readings.filter((reading) => from.includes(reading.channel));
    const [first] = sources;
    if (first === undefined) return;
    readings.push({
      ...first,
      channel,
      column: sources.map((reading) => reading.column).join(', '),
      confidence: Number((0.9 * Math.min(...sources.map((reading) => reading.confidence))).toFixed(2)),
      reason: `No column gives it; ${how}.`,
      missing: values.reduce((count, x) => count + (Number.isFinite(x) ? 0 : 1), 0),
    });
  };
  if (velocity !== null && channels.speed === undefined && channels.inertialSpeed === undefined) {
    derive('speed', lengths(velocity), velocityNames, 'it is the length of the logged velocity');
  }
  if (position === null) return;
  const distance = lengths(position);
  const start = distance.find((x) => Number.isFinite(x)) ?? 0;
  if (start <= CENTRE_DISTANCE_M) {
    if (channels.altitude !== undefined) return;
    const axis = upAxis(position);
    if (axis === null) return;
    const [k, sign] = axis;
    const up = position[k];
    const rate = velocity?.[k];
    if (up === undefined) return;
    derive(
      'altitude',
      up.map((x) => sign * x),
      [positionNames[k] ?? 'positionZ'],
      'the first motion is along this axis, so it points up',
    );
    if (rate !== undefined && channels.verticalSpeed === undefined) {
      derive(
        'verticalSpeed',
        rate.map((x) => sign * x),
        [velocityNames[k] ?? 'velocityZ'],
        'its axis points up',
      );
    }
    return;
  }
  if (velocity !== null && channels.verticalSpeed === undefined) {
    const rate = distance.map(
      (r, i) => position.reduce((sum, p, k) => sum + p[i]! * (velocity[k]?.[i] ?? 0), 0) / r,
    );
    derive(
      'verticalSpeed',
      rate,
      [...positionNames, ...velocityNames],
      'it is the logged velocity along the position',
    );
  }
  if (channels.altitude !== undefined) return;
  const base = groundRadius(time, distance, channels.speed ?? channels.inertialSpeed);
  if (base === null) return;
  derive(
    'altitude',
    distance.map((r) => r - base.radius_m),
    positionNames,
    `it is the distance from the centre less ${base.text}`,
  );
  notes.push({
    code: 'altitude-from-position',
    channel: 'altitude',
    rows: null,
    count: distance.length,
    text: `The altitude is the distance of the logged position from the centre less ${base.text}.`,
  });
}

function components(channels: Channels, names: readonly ChannelName[]): Float64Array[] | null {
  const [x, y, z] = names.map((name) => channels[name]);
  if (x === undefined || y === undefined) return null;
  return z === undefined ? [x, y] : [x, y, z];
}

function lengths(parts: readonly Float64Array[]): Float64Array {
  return (parts[0] ?? new Float64Array(0)).map((_, i) => Math.hypot(...parts.map((part) => part[i]!)));
}

/** Index of the axis along which the first twentieth of the way goes, with the sign that makes it a climb. */
function upAxis(position: readonly Float64Array[]): readonly [number, 1 | -1] | null {
  const first = position.map((part) => part.find((x) => Number.isFinite(x)) ?? 0);
  const away = (i: number): number[] => position.map((part, k) => part[i]! - (first[k] ?? 0));
  const n = position[0]?.length ?? 0;
  let farthest = 0;
  for (let i = 0; i < n; i++)
    farthest = Math.max(farthest, Math.hypot(...away(i).map((x) => (Number.isFinite(x) ? x : 0))));
  for (let i = 0; i < n; i++) {
    const moved = away(i);
    if (!(Math.hypot(...moved) > 0.02 * farthest)) continue;
    const k = moved.reduce((best, x, at) => (Math.abs(x) > Math.abs(moved[best] ?? 0) ? at : best), 0);
    return [k, (moved[k] ?? 0) < 0 ? -1 : 1];
  }
  return null;
}

function groundRadius(
  time: Float64Array,
  distance: Float64Array,
  speed: Float64Array | undefined,
): { readonly radius_m: number; readonly text: string } | null {
  const start = distance.find((x) => Number.isFinite(x)) ?? 0;
  const written = (radius_m: number): string => `${(radius_m / 1000).toFixed(3)} km`;
  if (speed !== undefined && openingValue(time, speed) < TURNING_GROUND_M_S) {
    return { radius_m: start, text: `${written(start)}, where the log begins on the ground` };
  }
  const world = [EARTH, MARS, MOON].find(
    (w) => start > 0.99 * w.radius_m && start < w.radius_m + HIGHEST_START_M,
  );
  return world === undefined
    ? null
    : { radius_m: world.radius_m, text: `${written(world.radius_m)}, the radius of ${world.name}` };
}

import type { ChannelName, ChannelReading, QualityNote } from './types.ts';
import { riseRatio } from './unitEvidence.ts';

/** A climb this many times faster than the speed cannot come from noise or from coarse steps. */
const IMPOSSIBLE = 1.5;

/** A note where the units as written make the vehicle climb faster than it moves; null where they agree. */
export function climbCheck(
  time: Float64Array,
  channels: Readonly<Partial<Record<ChannelName, Float64Array>>>,
  readings: readonly ChannelReading[],
): QualityNote | null {
  const channel = channels.speed === undefined ? 'inertialSpeed' : 'speed';
  const speed = channels[channel];
  if (channels.altitude === undefined || speed === undefined) return null;
  const ratio = riseRatio(time, channels.altitude, speed);
  if (!(ratio > IMPOSSIBLE)) return null;
  const unitOf = (of: ChannelName): string => readings.find((reading) => reading.channel === of)?.unit ?? '?';
  return {
    code: 'units-contradict',
    channel: 'altitude',
    rows: null,
    count: 1,
    text: `The altitude (${unitOf('altitude')}) rises ${ratio.toPrecision(2)} times as fast as the speed (${unitOf(channel)}) allows: one of the units, or the time's, is not what it says.`,
  };
}

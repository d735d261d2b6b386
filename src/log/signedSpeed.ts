import { largestMagnitude, quantile } from './statistics.ts';
import type { ChannelName, ChannelReading, QualityNote } from './types.ts';

/**
 * A speed that turns negative on the way down is the vertical speed of an upright flight: it becomes that
 * channel, and its magnitude the speed.
 */
export function settleSignedSpeed(
  channels: Partial<Record<ChannelName, Float64Array>>,
  readings: ChannelReading[],
  notes: QualityNote[],
): void {
  const { speed } = channels;
  const at = readings.findIndex((reading) => reading.channel === 'speed');
  const reading = readings[at];
  if (speed === undefined || reading === undefined) return;
  if (!anyBelowZero(speed)) return;
  if (!(quantile(speed, 0.02) < -Math.max(2, 0.01 * largestMagnitude(speed)))) return;
  channels.speed = speed.map(Math.abs);
  if (channels.verticalSpeed === undefined) {
    channels.verticalSpeed = speed;
    readings.push({
      ...reading,
      channel: 'verticalSpeed',
      confidence: Number((0.8 * reading.confidence).toFixed(2)),
      reason: 'The speed has a sign, so it counts along the vertical.',
    });
  }
  notes.push({
    code: 'speed-signed',
    channel: 'speed',
    rows: null,
    count: speed.reduce((count, x) => count + (x < 0 ? 1 : 0), 0),
    text: `The column “${reading.column}” turns negative, so it is a vertical speed; its magnitude is taken for the speed, which leaves out any motion along the ground.`,
  });
}

function anyBelowZero(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i++) if (values[i]! < 0) return true;
  return false;
}

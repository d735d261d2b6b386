import type { ChannelName, QualityNote } from './types.ts';

/** How closely a vertical speed must follow the falling altitude before its sign is turned. */
const OPPOSED = -0.8;

/** Turns a vertical speed that counts downward, which the altitude's own rate shows. */
export function settleVerticalSign(
  time: Float64Array,
  channels: Partial<Record<ChannelName, Float64Array>>,
  notes: QualityNote[],
): void {
  const { altitude, verticalSpeed } = channels;
  if (altitude === undefined || verticalSpeed === undefined) return;
  const width = Math.max(1, Math.floor(time.length / 100));
  let both = 0;
  let rates = 0;
  let speeds = 0;
  for (let i = 0; i + width < time.length; i += width) {
    const rate = (altitude[i + width]! - altitude[i]!) / (time[i + width]! - time[i]!);
    const speed = (verticalSpeed[i]! + verticalSpeed[i + width]!) / 2;
    if (!Number.isFinite(rate + speed)) continue;
    both += rate * speed;
    rates += rate * rate;
    speeds += speed * speed;
  }
  if (!(both < OPPOSED * Math.sqrt(rates * speeds))) return;
  channels.verticalSpeed = verticalSpeed.map((x) => -x);
  notes.push({
    code: 'vertical-speed-downward',
    channel: 'verticalSpeed',
    rows: null,
    count: verticalSpeed.length,
    text: 'The vertical speed falls where the altitude rises, so it counts downward; its sign is turned.',
  });
}

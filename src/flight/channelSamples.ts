import type { ChannelName, Log } from '../log/types.ts';
import { whiteNoise } from './noise.ts';
import { finiteSamples, type Samples, stairEdges } from './steps.ts';

/** A channel where it carries information. */
export interface ChannelSamples {
  readonly samples: Samples;
  readonly stair: boolean;
  /** Step to which the channel is rounded, 0 where none is seen. */
  readonly step: number;
}

/** A channel's samples; of a staircase its edges. `t` are the rows' times. */
export function channelSamples(log: Log, t: Float64Array, name: ChannelName): ChannelSamples {
  const all = finiteSamples(t, log.channels[name] ?? new Float64Array(0));
  const step = log.resolution[name] ?? 0;
  const stairs = step > 0 ? stairEdges(all) : null;
  return stairs === null
    ? { samples: all, stair: false, step }
    : { samples: stairs.samples, stair: true, step: Math.max(step, stairs.step) };
}

/** One-sigma error of a sample: its white noise, or its rounding where that is more. */
export function sigmaOf(channel: ChannelSamples): number {
  return Math.max(whiteNoise(channel.samples.t, channel.samples.y), channel.step / Math.sqrt(12));
}

import { openingValue } from './opening.ts';

/** From where a pitch angle counts, with the evidence in words. */
export interface PitchSense {
  readonly from: 'horizon' | 'vertical';
  readonly confidence: number;
  readonly reason: string;
}

const DEGREE = Math.PI / 180;

/**
 * Tells whether pitch (rad) counts from the horizon or from the vertical: on the pad a rocket stands upright,
 * later its thrust is nearer to its path than to the path's mirror image about 45°.
 */
export function pitchSense(
  time: Float64Array,
  altitude: Float64Array,
  speed: Float64Array,
  pitch: Float64Array,
): PitchSense {
  const first = openingValue(time, pitch);
  const startsSlow = openingValue(time, speed) < 30;
  if (startsSlow && Math.abs(first - Math.PI / 2) < 20 * DEGREE) {
    return {
      from: 'horizon',
      confidence: 0.97,
      reason: 'upright on the pad it is 90°, so it counts from the horizon',
    };
  }
  if (startsSlow && Math.abs(first) < 20 * DEGREE && largest(pitch) > 25 * DEGREE) {
    return {
      from: 'vertical',
      confidence: 0.95,
      reason:
        'upright on the pad it is 0°, so it counts from the vertical and is turned to count from the horizon',
    };
  }
  const width = Math.max(2, Math.floor(time.length / 60));
  let upright = 0;
  let mirrored = 0;
  for (let i = 0; i + width < time.length; i += width) {
    const dt = time[i + width]! - time[i]!;
    const rate = (altitude[i + width]! - altitude[i]!) / dt;
    const v = speed[i + (width >> 1)]!;
    const p = pitch[i + (width >> 1)]!;
    if (!(v > 50) || !Number.isFinite(rate + p)) continue;
    const path = Math.asin(Math.max(-1, Math.min(1, rate / v)));
    upright += Math.abs(p - path);
    mirrored += Math.abs(Math.PI / 2 - p - path);
  }
  return mirrored < 0.5 * upright
    ? {
        from: 'vertical',
        confidence: 0.8,
        reason:
          'it follows the path only if it counts from the vertical; it is turned to count from the horizon',
      }
    : {
        from: 'horizon',
        confidence: upright < mirrored ? 0.9 : 0.7,
        reason: 'it is taken to count from the horizon',
      };
}

function largest(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const x of values) if (x > most) most = x;
  return most;
}

import type { Axis } from './axis.ts';
import type { RawBurn } from './burnEdges.ts';

/** Fills gaps of a channel by straight lines; ends are held. Null where nothing is finite. */
export function filled(t: Float64Array, y: Float64Array | undefined): Float64Array | null {
  if (y === undefined) return null;
  const out = Float64Array.from(y);
  let last = -1;
  for (let i = 0; i < out.length; i++) {
    if (!Number.isFinite(out[i]!)) continue;
    for (let j = last + 1; j < i; j++) {
      out[j] =
        last === -1
          ? out[i]!
          : out[last]! + ((out[i]! - out[last]!) * (t[j]! - t[last]!)) / (t[i]! - t[last]!);
    }
    last = i;
  }
  if (last === -1) return null;
  for (let j = last + 1; j < out.length; j++) out[j] = out[last]!;
  return out;
}

/**
 * A control channel (throttle, pitch, heading, thrust) on the axis. Controls may jump at a burn's edges, so a
 * point inserted there takes the burn's side: the line through the two nearest samples inside the burn.
 */
export function controlOnAxis(
  axis: Axis,
  t: Float64Array,
  channel: Float64Array | null,
  burns: readonly RawBurn[],
): Float64Array | null {
  if (channel === null) return null;
  const n = axis.time.length;
  const out = new Float64Array(n).fill(Number.NaN);
  for (let i = 0; i < n; i++) if (axis.row[i]! >= 0) out[i] = channel[axis.row[i]!]!;
  burns.forEach((burn, k) => {
    const start = axis.burnStart[k]!;
    const end = axis.burnEnd[k]!;
    if (axis.row[start] === -1)
      out[start] = lineAt(t, channel, burn.first, Math.min(burn.first + 1, burn.last), burn.start_s);
    if (axis.row[end] === -1)
      out[end] = lineAt(t, channel, burn.last, Math.max(burn.last - 1, burn.first), burn.end_s);
  });
  for (let i = 0; i < n; i++)
    if (Number.isNaN(out[i]!) && axis.row[i] === -1) out[i] = i > 0 ? out[i - 1]! : out[i + 1]!;
  return out;
}

function lineAt(t: Float64Array, y: Float64Array, near: number, far: number, at: number): number {
  if (near === far) return y[near]!;
  return y[near]! + ((y[far]! - y[near]!) * (at - t[near]!)) / (t[far]! - t[near]!);
}

import type { ChannelName, QualityNote } from './types.ts';

/** Steps too small to shape any figure of a review get no note. */
const worthTelling: Readonly<Partial<Record<ChannelName, { step: number; unit: string; does: string }>>> = {
  altitude: { step: 10, unit: 'm', does: 'its rate is taken over many rows' },
  speed: { step: 0.2, unit: 'm/s', does: 'speeds are sure to half a step' },
  inertialSpeed: { step: 0.2, unit: 'm/s', does: 'speeds are sure to half a step' },
};

/** Changes that must be whole tens of steps in a row before a stretch counts as coarser. */
const FEWEST_CHANGES = 6;

/** A note on a channel that was rounded coarsely, and where it was rounded ten times as coarsely. */
export function roundingNote(
  channel: ChannelName,
  values: Float64Array,
  step: number,
  rows: Int32Array,
): QualityNote | null {
  const limit = worthTelling[channel];
  if (limit === undefined || step < limit.step) return null;
  const coarse = coarserStretch(values, step);
  const written = (x: number): string => `${Number(x.toPrecision(3))} ${limit.unit}`;
  const lines =
    coarse === null ? null : ([(rows[coarse.from] ?? 0) + 1, (rows[coarse.to] ?? 0) + 1] as const);
  return {
    code: 'rounded',
    channel,
    rows: null,
    count: values.length,
    text: `The values move in steps of ${written(step)}${
      lines === null ? '' : ` (${written(10 * step)} in rows ${lines[0]} to ${lines[1]})`
    }; ${limit.does}.`,
  };
}

/** The longest stretch in which every change is a whole multiple of ten steps; null where there is none. */
function coarserStretch(values: Float64Array, step: number): { from: number; to: number } | null {
  let best: { from: number; to: number } | null = null;
  let from = 0;
  let last = 0;
  let changes = 0;
  let before = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (!Number.isFinite(x)) continue;
    const count = Number.isNaN(before) ? 0 : Math.round(Math.abs(x - before) / step);
    before = x;
    if (count === 0) continue;
    if (count % 10 === 0) {
      if (changes === 0) from = i;
      changes++;
      last = i;
      if (changes >= FEWEST_CHANGES && (best === null || last - from > best.to - best.from))
        best = { from, to: last };
    } else changes = 0;
  }
  return best;
}

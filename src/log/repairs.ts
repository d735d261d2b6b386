import type { ChannelName, QualityNote } from './types.ts';

type Channels = Partial<Record<ChannelName, Float64Array>>;

/** Channels whose single wild values are taken out: they cannot jump and come back. */
const smoothChannels: readonly ChannelName[] = [
  'altitude',
  'speed',
  'inertialSpeed',
  'verticalSpeed',
  'horizontalSpeed',
  'mass',
  'propellantMass',
  'latitude',
  'downrange',
];

/** Longest run of wild values that is taken for an error of the log. */
const LONGEST_RUN = 5;

/** Takes out what the vehicle cannot have done; what is taken out is missing afterwards, never invented. */
export function repairChannels(
  time: Float64Array,
  channels: Readonly<Channels>,
  rows: Int32Array,
): { channels: Readonly<Channels>; notes: readonly QualityNote[] } {
  const notes: QualityNote[] = [];
  const out: Channels = { ...channels };
  for (const channel of smoothChannels) {
    const values = channels[channel];
    if (values === undefined) continue;
    const wild = wildValues(time, values);
    const [first] = wild;
    const last = wild.at(-1);
    if (first === undefined || last === undefined || wild.length > 0.1 * values.length) continue;
    const kept = Float64Array.from(values);
    for (const i of wild) kept[i] = Number.NaN;
    out[channel] = kept;
    notes.push({
      code: 'outliers',
      channel,
      rows: [(rows[first] ?? 0) + 1, (rows[last] ?? 0) + 1],
      count: wild.length,
      text: `${wild.length} value(s) jump away and back as no vehicle can; they are left out, so the figures there rest on the neighbours.`,
    });
  }
  return { channels: out, notes };
}

/**
 * Indices of runs of up to five values that lie away from both the value before and the value after them, on the
 * same side, by far more than neighbours differ anywhere near, while the two agree with each other.
 */
function wildValues(time: Float64Array, values: Float64Array): number[] {
  const index: number[] = [];
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) index.push(i);
  const found: number[] = [];
  for (let k = 1; k < index.length - 1; k++) {
    const before = values[index[k - 1]!]!;
    const jump = values[index[k]!]! - before;
    if (jump === 0) continue;
    const rate = usualRate(time, values, index, k);
    const far = (from: number, to: number): number =>
      FAR * rate * (time[index[to]!]! - time[index[from]!]!) + 1e-6 * Math.abs(before);
    if (Math.abs(jump) <= far(k - 1, k)) continue;
    const length = runLength(values, index, k, (to) => far(k - 1, to) / FAR);
    if (length === 0) continue;
    for (let j = 0; j < length; j++) found.push(index[k + j]!);
    k += length - 1;
  }
  return found;
}

/** A value is wild when it is this many times farther from its neighbour than is usual around it. */
const FAR = 12;

/** Length of the run that begins at k and comes back; 0 where it does not. */
function runLength(
  values: Float64Array,
  index: readonly number[],
  k: number,
  usual: (to: number) => number,
): number {
  const before = values[index[k - 1]!]!;
  const side = Math.sign(values[index[k]!]! - before);
  for (let length = 1; length <= LONGEST_RUN && k + length < index.length; length++) {
    const after = values[index[k + length]!]!;
    const allowed = usual(k + length);
    if (Math.abs(after - before) > 3 * allowed) continue;
    for (let j = 0; j < length; j++) {
      const value = values[index[k + j]!]!;
      if (side * (value - before) < 3 * allowed || side * (value - after) < 3 * allowed) return 0;
    }
    return length;
  }
  return 0;
}

/** The 0.8 quantile of rates of change among the forty samples around. */
function usualRate(time: Float64Array, values: Float64Array, index: readonly number[], k: number): number {
  const rates: number[] = [];
  for (let j = Math.max(1, k - 20); j < Math.min(index.length, k + 25); j++) {
    const [a, b] = [index[j - 1]!, index[j]!];
    rates.push(Math.abs(values[b]! - values[a]!) / (time[b]! - time[a]!));
  }
  rates.sort((a, b) => a - b);
  return rates[Math.floor(0.8 * (rates.length - 1))] ?? 0;
}

import { counted } from '../units/figures.ts';
import { courseOf } from './course.ts';
import { heldRuns } from './heldRuns.ts';
import { wildValues } from './outliers.ts';
import { roundingStep } from './resolution.ts';
import { median } from './statistics.ts';
import type { ChannelName, QualityNote } from './types.ts';
import { unitChanges } from './unitChange.ts';

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

/** Channels that never hold still while the vehicle flies. */
const movingChannels: readonly ChannelName[] = [
  'altitude',
  'speed',
  'inertialSpeed',
  'verticalSpeed',
  'horizontalSpeed',
  'downrange',
];

/** Channels whose scale is watched for a change of unit. */
const scaledChannels: readonly ChannelName[] = ['altitude', 'speed', 'inertialSpeed'];

/** Channels that turn over at a full circle. */
const circularChannels: readonly ChannelName[] = ['longitude', 'heading', 'course', 'roll'];

/** More than this share of a channel is no error of single rows; it is left as it is. */
const MOST_REPAIRED = 0.5;

/**
 * Takes out what the vehicle cannot have done. What is taken out is missing afterwards, never replaced; only a
 * change of scale is undone. `rows` are the table rows of the samples, for the notes; `factors` turn SI values
 * back into written ones. `stepOf` gives the step to which a channel is rounded.
 */
export function repairChannels(
  time: Float64Array,
  channels: Readonly<Channels>,
  rows: Int32Array,
  factors: Readonly<Partial<Record<ChannelName, number>>>,
  stepOf: (values: Float64Array) => number | null = roundingStep,
): { channels: Readonly<Channels>; notes: readonly QualityNote[] } {
  const notes: QualityNote[] = gapNotes(time, rows);
  const out: Channels = { ...channels };
  const lines = (from: number, to: number): readonly [number, number] => [
    (rows[from] ?? 0) + 1,
    (rows[to] ?? 0) + 1,
  ];
  const takeOut = (channel: ChannelName, taken: readonly number[]): void => {
    const kept = Float64Array.from(out[channel] ?? []);
    for (const i of taken) kept[i] = Number.NaN;
    out[channel] = kept;
  };
  for (const channel of circularChannels) unwrap(channel, out, rows, notes);
  for (const channel of smoothChannels) {
    const values = out[channel];
    if (values === undefined) continue;
    const wild = wildValues(time, values);
    const [first] = wild;
    const last = wild.at(-1);
    if (first === undefined || last === undefined || wild.length > 0.1 * values.length) continue;
    takeOut(channel, wild);
    notes.push({
      code: 'outliers',
      channel,
      rows: lines(first, last),
      count: wild.length,
      text: `Left out: ${counted(wild.length, 'value', 'values')} jumping away and back as no vehicle can; the figures there rest on the neighbours.`,
    });
  }
  for (const channel of movingChannels) {
    const values = out[channel];
    if (values === undefined) continue;
    const runs = heldRuns(time, values, stepOf(values) ?? 0, (x) => x / (factors[channel] ?? 1));
    for (const kind of ['frozen', 'dropout'] as const) {
      const of = runs.filter((run) => run.kind === kind);
      const [first] = of;
      const last = of.at(-1);
      const taken = of.flatMap(({ from, to }) => Array.from({ length: to - from + 1 }, (_, i) => from + i));
      if (first === undefined || last === undefined || taken.length > MOST_REPAIRED * values.length) continue;
      takeOut(channel, taken);
      notes.push({
        code: kind,
        channel,
        rows: lines(first.from, last.to),
        count: taken.length,
        text:
          kind === 'frozen'
            ? `Left out: ${counted(taken.length, 'value', 'values')} repeating the last one while the vehicle flies on, before the channel catches up.`
            : `Left out: ${counted(taken.length, 'value', 'values')} at a figure that fits neither what comes before nor after.`,
      });
    }
  }
  for (const channel of scaledChannels) {
    const values = out[channel];
    if (values === undefined) continue;
    const changes = unitChanges(time, values);
    if (changes.length === 0) continue;
    const scaled = Float64Array.from(values);
    for (const { row, scale } of changes)
      for (let i = row; i < scaled.length; i++) scaled[i] = scaled[i]! * scale;
    out[channel] = scaled;
    for (const { row, text } of changes) {
      notes.push({
        code: 'unit-change',
        channel,
        rows: lines(row, scaled.length - 1),
        count: scaled.length - row,
        text: `From here the values go on at another scale, as when the unit changes; they are multiplied by ${text}.`,
      });
    }
  }
  return { channels: out, notes };
}

/** A gap is longer than this, s. */
const SHORTEST_GAP_S = 2;

/** Gaps over ten usual steps and two seconds. */
function gapNotes(time: Float64Array, rows: Int32Array): QualityNote[] {
  if (courseOf(time).largestRise <= SHORTEST_GAP_S) return [];
  const steps = new Float64Array(Math.max(0, time.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = time[i + 1]! - time[i]!;
  const usual = median(steps);
  const gaps: number[] = [];
  let longest = 0;
  steps.forEach((step, i) => {
    if (step <= Math.max(10 * usual, SHORTEST_GAP_S)) return;
    gaps.push(i);
    longest = Math.max(longest, step);
  });
  const [first] = gaps;
  const last = gaps.at(-1);
  if (first === undefined || last === undefined) return [];
  return [
    {
      code: 'gap',
      channel: null,
      rows: [(rows[first] ?? 0) + 1, (rows[last + 1] ?? 0) + 1],
      count: gaps.length,
      text: `${counted(gaps.length, 'gap', 'gaps')} without rows, the longest ${Number(longest.toPrecision(3))} s; what happened inside is known only from the rows beside.`,
    },
  ];
}

/** Whether an angle jumps by half a circle or more anywhere. */
function turnsOver(values: Float64Array): boolean {
  const { whole, largestRise, deepestFall } = courseOf(values);
  if (whole) return largestRise > Math.PI || deepestFall < -Math.PI;
  let before = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (!Number.isFinite(x)) continue;
    if (Math.abs(x - before) > Math.PI) return true;
    before = x;
  }
  return false;
}

/** Makes an angle go on past its full circle. */
function unwrap(channel: ChannelName, out: Channels, rows: Int32Array, notes: QualityNote[]): void {
  const values = out[channel];
  if (values === undefined) return;
  if (!turnsOver(values)) return;
  const turned = Float64Array.from(values);
  const turns: number[] = [];
  let shift = 0;
  let before = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (!Number.isFinite(x)) continue;
    // A jump of half a circle or more is the written angle beginning again.
    if (Math.abs(x - before) > Math.PI) {
      shift -= 2 * Math.PI * Math.round((x - before) / (2 * Math.PI));
      turns.push(i);
    }
    turned[i] = x + shift;
    before = x;
  }
  const [first] = turns;
  if (first === undefined || turns.length > 0.02 * values.length + 2) return;
  out[channel] = turned;
  notes.push({
    code: 'angle-turned-over',
    channel,
    rows: [(rows[first] ?? 0) + 1, (rows[turns.at(-1) ?? first] ?? 0) + 1],
    count: turns.length,
    text: `The angle begins again at a full circle ${counted(turns.length, 'time', 'times')}; it is made to go on.`,
  });
}

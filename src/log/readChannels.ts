import { counted } from '../units/figures.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Unit } from '../units/units.ts';
import type { Assigned } from './assign.ts';
import { SECOND_SPEED } from './channelMatch.ts';
import { fillFromVectors } from './fromVectors.ts';
import { type ImpliedUnit, impliedUnit } from './impliedUnits.ts';
import { inUnit } from './inUnit.ts';
import { isMissingMark } from './numbers.ts';
import { pitchSense } from './pitchSense.ts';
import { quantityOf } from './quantities.ts';
import { settleSignedSpeed } from './signedSpeed.ts';
import { speedFrame } from './speedFrame.ts';
import { finiteCount } from './statistics.ts';
import { gathered, type TimeAxis } from './timeAxis.ts';
import type { TimeColumn } from './timeColumn.ts';
import type { ChannelName, ChannelReading, QualityNote } from './types.ts';
import { type MotionUnits, motionUnits } from './unitEvidence.ts';
import { settleVerticalSign } from './verticalSign.ts';
import { noiseWords, plainWords, weakeningWords } from './vocabulary.ts';

type Channels = Partial<Record<ChannelName, Float64Array>>;

/** Channels in SI units with the record of how each was read. */
export interface ReadChannels {
  readonly time: Float64Array;
  readonly channels: Readonly<Channels>;
  readonly readings: readonly ChannelReading[];
  readonly notes: readonly QualityNote[];
}

/** A unit with where it is from and what that does to the confidence. */
interface ChosenUnit {
  readonly unit: Unit;
  readonly unitFrom: ChannelReading['unitFrom'];
  readonly confidence: number;
  readonly reason: string;
}

/** Turns the assigned columns into channels: rows in the order of time, units found where none are written. */
export function readChannels(assigned: readonly Assigned[], clock: TimeColumn, axis: TimeAxis): ReadChannels {
  const notes: QualityNote[] = [];
  const rowsOf = (a: Assigned): Float64Array => {
    const { numbers, texts } = a.column;
    const values = axis.whole ? numbers : gathered(numbers, axis.rows);
    if (a.channel !== 'stage' || texts.size === 0) return values;
    return values.map((x, i) => (Number.isNaN(x) ? numberIn(texts.get(axis.rows[i]!)) : x));
  };
  const written = new Map(assigned.map((a) => [a.channel, rowsOf(a)] as const));
  const motion = inferMotion(assigned, written, clock, axis);
  const timeUnit = clock.unit ?? motion?.time ?? { spelling: 's', factor: 1, offset: 0 };
  const time = clock.unit === null ? inUnit(axis.time, { factor: timeUnit.factor, offset: 0 }) : axis.time;

  const used = new Map<Quantity, Unit>();
  for (const a of assigned)
    if (a.unit !== null && !used.has(quantityOf[a.channel])) used.set(quantityOf[a.channel], a.unit);
  if (motion !== null && !used.has('length')) used.set('length', motion.altitude);
  if (motion !== null && !used.has('speed')) used.set('speed', motion.speed);

  const channels: Channels = {};
  const readings: ChannelReading[] = [];
  for (const a of assigned) {
    const values = written.get(a.channel) ?? new Float64Array(0);
    const chosen = chooseUnit(a, values, motion, { used, known: { ...channels, time } }, timeUnit, clock);
    readings.push({
      channel: a.channel,
      column: a.column.header,
      columnIndex: a.columnIndex,
      unit: chosen.unit.spelling,
      factor: chosen.unit.factor,
      offset: chosen.unit.offset,
      unitFrom: chosen.unitFrom,
      confidence: Number((a.confidence * chosen.confidence).toFixed(2)),
      reason: `${sentence(a.why)}${chosen.reason === '' ? '' : `; ${chosen.reason}`}.`,
      missing: missingRows(a, values, axis),
    });
    const unknown = chosen.unitFrom === 'inferred' || chosen.unitFrom === 'assumed' ? unknownUnit(a) : null;
    if (unknown !== null) notes.push(unknownUnitNote(a, unknown, chosen.unit.spelling));
    const unreadable = unreadableNote(a);
    if (unreadable !== null) notes.push(unreadable);
    if (!used.has(quantityOf[a.channel])) used.set(quantityOf[a.channel], chosen.unit);
    if (a.channel === 'time' || a.channel === 'event') continue;
    channels[a.channel] = inUnit(values, chosen.unit);
  }
  fillFromVectors(time, channels, readings, notes);
  settleSignedSpeed(channels, readings, notes);
  settleSpeedFrame(time, channels, readings, notes);
  settleVerticalSign(time, channels, notes);
  settlePitch(time, channels, readings, notes);
  return { time, channels, readings, notes };
}

/** A channel with its gaps filled by the value before, for evidence only: channels may come in turns. */
function held(values: Float64Array | undefined): Float64Array {
  let last = Number.NaN;
  return (values ?? new Float64Array(0)).map((x) => {
    if (Number.isFinite(x)) last = x;
    return last;
  });
}

/** The number in a label such as “Stage 2”; NaN without one. */
function numberIn(label: string | undefined): number {
  const digits = /\d+/u.exec(label ?? '')?.[0];
  return digits === undefined ? Number.NaN : Number(digits);
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function inferMotion(
  assigned: readonly Assigned[],
  written: ReadonlyMap<ChannelName, Float64Array>,
  clock: TimeColumn,
  axis: TimeAxis,
): MotionUnits | null {
  const altitude = assigned.find((a) => a.channel === 'altitude');
  const speed =
    assigned.find((a) => a.channel === 'speed') ??
    assigned.find((a) => a.channel === 'inertialSpeed') ??
    assigned.find((a) => a.channel === 'verticalSpeed');
  if (altitude === undefined || speed === undefined) return null;
  if (altitude.unit !== null && speed.unit !== null && clock.unit !== null) return null;
  const secondUnit: Unit = { spelling: 's', factor: 1, offset: 0 };
  return motionUnits(
    { values: axis.time, unit: clock.unit === null ? null : secondUnit },
    { values: held(written.get('altitude')), unit: altitude.unit },
    { values: held(written.get(speed.channel)), unit: speed.unit },
  );
}

function chooseUnit(
  a: Assigned,
  values: Float64Array,
  motion: MotionUnits | null,
  around: { used: ReadonlyMap<Quantity, Unit>; known: Channels },
  timeUnit: Unit,
  clock: TimeColumn,
): ChosenUnit {
  if (a.channel === 'time') {
    if (a.unit !== null && a.unitFrom !== null)
      return { unit: a.unit, unitFrom: a.unitFrom, confidence: clock.confidence, reason: clock.why };
    return {
      unit: clock.unit ?? timeUnit,
      unitFrom: 'inferred',
      confidence: clock.unit === null ? (motion?.confidence ?? 0.7) : clock.confidence,
      reason:
        clock.why !== ''
          ? clock.why
          : `${timeUnit.spelling} is taken: ${motion?.reason ?? 'nothing speaks against it'}`,
    };
  }
  if (a.unit !== null && a.unitFrom !== null)
    return { unit: a.unit, unitFrom: a.unitFrom, confidence: 1, reason: '' };
  const inferred: ImpliedUnit | null =
    motion === null
      ? null
      : a.channel === 'altitude'
        ? {
            unit: motion.altitude,
            unitFrom: 'inferred',
            confidence: motion.confidence,
            reason: `no unit is written: ${motion.reason}`,
          }
        : a.channel === 'speed' || a.channel === 'inertialSpeed'
          ? {
              unit: motion.speed,
              unitFrom: 'inferred',
              confidence: motion.confidence,
              reason: `no unit is written: ${motion.reason}`,
            }
          : null;
  return inferred ?? impliedUnit(a.channel, values, around);
}

function missingRows(a: Assigned, values: Float64Array, axis: TimeAxis): number {
  if (a.channel === 'time') return 0;
  if (a.channel !== 'event') return values.length - finiteCount(values);
  let missing = 0;
  for (let i = 0; i < axis.rows.length; i++) if (!a.column.texts.has(axis.rows[i]!)) missing++;
  return missing;
}

/** The bracket of a header that was meant as a unit but is none that is known; null where there is none. */
function unknownUnit(a: Assigned): string | null {
  const written = a.column.unitsCell ?? /[[(]([^[\](){}]{1,12})[\])]\s*$/u.exec(a.column.header)?.[1] ?? '';
  const text = written.trim();
  // Letters with a stroke or a power, or a short word that says nothing else.
  const words = text.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const meant = /^\p{L}{1,4}(?:[/·.^*\s-]*\p{L}{0,3}[-\d]*)?$/u.test(text);
  const telling = words.every((word) => word === '' || noiseWords.has(word) || weakeningWords.has(word));
  const known = words.some((word) => word.length > 1 && plainWords.has(word));
  return text !== '' && meant && !telling && !known && quantityOf[a.channel] !== 'text' ? text : null;
}

function unknownUnitNote(a: Assigned, written: string, taken: string): QualityNote {
  return {
    code: 'unit-unknown',
    channel: a.channel,
    rows: null,
    count: 1,
    text: `“${written}” behind “${a.column.header}” is no unit that is known here; ${taken === '' ? 'none' : taken} is taken. A --map choice can say which unit is meant.`,
  };
}

function unreadableNote(a: Assigned): QualityNote | null {
  if (a.channel === 'event' || a.channel === 'time' || a.channel === 'stage') return null;
  const bad = [...a.column.texts].filter(([, text]) => !isMissingMark(text));
  const [first] = bad;
  const last = bad.at(-1);
  if (first === undefined || last === undefined) return null;
  return {
    code: 'unreadable-cells',
    channel: a.channel,
    rows: [first[0] + 1, last[0] + 1],
    count: bad.length,
    text: `No number in ${counted(bad.length, 'cell', 'cells')} of “${a.column.header}” (first: “${first[1].slice(0, 40)}”): counted as missing.`,
  };
}

/** Moves a speed to the frame that its start shows, and says so. */
function settleSpeedFrame(
  time: Float64Array,
  channels: Channels,
  readings: ChannelReading[],
  notes: QualityNote[],
): void {
  for (const channel of ['speed', 'inertialSpeed'] as const) {
    const values = channels[channel];
    if (values === undefined || channels.altitude === undefined) continue;
    const seen = speedFrame(time, channels.altitude, values);
    const at = readings.findIndex((reading) => reading.channel === channel);
    const reading = readings[at];
    if (reading === undefined) continue;
    if (channel === 'inertialSpeed' && reading.confidence <= SECOND_SPEED && seen?.frame !== 'inertial') {
      delete channels[channel];
      readings.splice(at, 1);
      continue;
    }
    if (seen === null) continue;
    const right = seen.frame === 'ground' ? 'speed' : 'inertialSpeed';
    const reason = `${reading.reason.slice(0, -1)}; ${seen.reason}.`;
    if (right === channel || channels[right] !== undefined) {
      if (right === channel) readings[at] = { ...reading, reason };
      continue;
    }
    channels[right] = values;
    delete channels[channel];
    readings[at] = { ...reading, channel: right, reason };
    notes.push({
      code: 'speed-frame',
      channel: right,
      rows: null,
      count: 1,
      text: `The column “${reading.column}” reads as ${channel === 'speed' ? 'a speed over the ground' : 'an inertial speed'}, but ${seen.reason}.`,
    });
    return;
  }
}

function settlePitch(
  time: Float64Array,
  channels: Channels,
  readings: ChannelReading[],
  notes: QualityNote[],
): void {
  const speed = channels.speed ?? channels.inertialSpeed;
  if (channels.pitch === undefined || channels.altitude === undefined || speed === undefined) return;
  const sense = pitchSense(time, channels.altitude, speed, channels.pitch);
  const at = readings.findIndex((reading) => reading.channel === 'pitch');
  const reading = readings[at];
  if (reading === undefined) return;
  const reason = `${reading.reason.slice(0, -1)}; ${sense.reason}.`;
  readings[at] = {
    ...reading,
    reason,
    confidence: Number((reading.confidence * sense.confidence).toFixed(2)),
  };
  if (sense.from === 'horizon') return;
  channels.pitch = channels.pitch.map((x) => Math.PI / 2 - x);
  notes.push({
    code: 'pitch-from-vertical',
    channel: 'pitch',
    rows: null,
    count: channels.pitch.length,
    text: `The column “${reading.column}”: ${sense.reason}.`,
  });
}

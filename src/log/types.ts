/** Names of the channels that `--map`, the Columns screen and exports use (numeric ones; `event` is text). */
export const channelNames = [
  'time',
  'altitude',
  'speed',
  'inertialSpeed',
  'verticalSpeed',
  'horizontalSpeed',
  'flightPathAngle',
  'heading',
  'course',
  'latitude',
  'longitude',
  'downrange',
  'positionX',
  'positionY',
  'positionZ',
  'velocityX',
  'velocityY',
  'velocityZ',
  'mass',
  'propellantMass',
  'throttle',
  'pitch',
  'roll',
  'thrust',
  'drag',
  'acceleration',
  'dynamicPressure',
  'ambientPressure',
  'temperature',
  'mach',
  'angleOfAttack',
  'apoapsisAltitude',
  'periapsisAltitude',
  'stage',
  'event',
] as const;

export type ChannelName = (typeof channelNames)[number];

/** How one column of the file was understood. */
export interface ChannelReading {
  readonly channel: ChannelName;
  /** Header text of the column as it stands in the file. */
  readonly column: string;
  /** 0-based position of the column. */
  readonly columnIndex: number;
  /** Spelling of the unit taken, e.g. `km`, `m/s`, `°`. */
  readonly unit: string;
  /** SI value = written value × factor + offset. */
  readonly factor: number;
  readonly offset: number;
  /** Where the unit comes from. */
  readonly unitFrom: 'header' | 'units-row' | 'inferred' | 'told' | 'assumed';
  /** 0 to 1: how sure the choice of channel and unit is. */
  readonly confidence: number;
  /** One sentence: from which words and which evidence. */
  readonly reason: string;
  /** Rows without a readable value. */
  readonly missing: number;
}

/** Something about the log that was repaired, or that limits what can be known. */
export interface QualityNote {
  readonly code: string;
  readonly channel: ChannelName | null;
  /** 1-based first and last data row concerned; null when it is about the whole log. */
  readonly rows: readonly [number, number] | null;
  readonly count: number;
  /** One sentence for people: what was found, what was done, what it does to the figures. */
  readonly text: string;
}

/** A log after reading: SI units, radians, one strictly increasing time axis, NaN = missing. Immutable. */
export interface Log {
  readonly source: {
    readonly name: string;
    readonly bytes: number;
    readonly form: 'delimited' | 'json-rows' | 'json-columns' | 'json-lines' | 'oem';
    readonly rows: number;
    readonly part: number;
    readonly parts: number;
  };
  /** Time in s as the log counts it. */
  readonly time: Float64Array;
  /** Channels other than time and event, all as long as `time`. */
  readonly channels: Readonly<Partial<Record<ChannelName, Float64Array>>>;
  /** Texts of the event column, with their times (s, as the log counts). */
  readonly eventTexts: readonly { readonly time_s: number; readonly text: string }[];
  readonly readings: readonly ChannelReading[];
  /** Headers of columns that were not used. */
  readonly unusedColumns: readonly string[];
  readonly notes: readonly QualityNote[];
  /** Step to which a channel was rounded, in SI, where one is seen; absent where none is. */
  readonly resolution: Readonly<Partial<Record<ChannelName, number>>>;
}

/** A user's own reading of a column: `--map CHANNEL=COLUMN[:UNIT]`. */
export interface ColumnChoice {
  /** `none`: the column is left alone. */
  readonly channel: ChannelName | 'none';
  readonly column: string;
  readonly unit: string | null;
}

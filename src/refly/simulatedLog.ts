import type { ChannelName, Log } from '../log/types.ts';
import type { Ascent } from './ascent.ts';
import type { FlightProgram, FlightResult } from './flightProgram.ts';
import { type RecordedName, SteadyRecorder } from './recorder.ts';

/** Rate of a simulated log, s. */
const PERIOD_S = 0.1;

/** Channels of a log, by the simulation's name for them. */
const recorded = {
  altitude: 'altitude_m',
  speed: 'speed_m_s',
  verticalSpeed: 'verticalSpeed_m_s',
  inertialSpeed: 'inertialSpeed_m_s',
  course: 'course_rad',
  latitude: 'latitude_rad',
  longitude: 'longitude_rad',
  mass: 'mass_kg',
  throttle: 'throttle',
  pitch: 'pitch_rad',
  heading: 'heading_rad',
  thrust: 'thrust_N',
  drag: 'drag_N',
} as const satisfies Partial<Record<ChannelName, RecordedName>>;

/**
 * Flies a program and writes it down as a log at 10 Hz, so that a simulated flight is understood by the same
 * code as a flown one.
 * @param name told as the log's source
 */
export function simulatedLog(
  ascent: Ascent,
  program: FlightProgram,
  name: string,
): { readonly log: Log; readonly result: FlightResult } {
  const names = ['time_s', 'stage', ...Object.values(recorded)] as const;
  const { start } = program;
  const begins_s = start.kind === 'pad' ? 0 - start.holdDown_s : 0;
  const recorder = new SteadyRecorder(names, PERIOD_S, begins_s);
  const result = ascent.fly(program, recorder);
  const columns = recorder.columns();
  const channels: Partial<Record<ChannelName, Float64Array>> = {
    stage: columns.stage.map((s) => s + 1),
  };
  for (const [channel, column] of Object.entries(recorded) as [ChannelName, (typeof names)[number]][])
    channels[channel] = columns[column];
  return {
    result,
    log: {
      source: {
        name,
        bytes: 0,
        form: 'delimited',
        rows: columns.time_s.length,
        part: 1,
        parts: 1,
      },
      time: columns.time_s,
      channels,
      eventTexts: [],
      readings: [],
      unusedColumns: [],
      notes: [],
      resolution: {},
    },
  };
}

import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

/** Flights of exactly known truth (an independent integrator carried every loss as a state); synthetic. */
export const referenceNames = [
  'earth-nominal',
  'earth-lofted',
  'osselby-nominal',
  'osselby-short',
  'osselby-early-cutoff',
  'osselby-throttled',
] as const;

export type ReferenceName = (typeof referenceNames)[number];

/** What a truth file holds, as far as the tests use it. */
export interface Truth {
  readonly ground: Record<string, number>;
  readonly inertial: Record<string, number>;
  readonly cutoff_time_s: number;
  readonly orbit_at_cutoff: {
    readonly semi_major_axis_m: number;
    readonly eccentricity: number;
    readonly apoapsis_altitude_m: number;
    readonly periapsis_altitude_m: number;
    readonly inclination_deg: number;
  };
  readonly remaining_delta_v: number;
  readonly max_q_Pa: number;
  readonly max_q_time_s: number;
  readonly events: readonly (readonly [number, string])[];
  readonly vehicle_delta_v_vacuum: number;
  readonly to_go: readonly {
    readonly t: number;
    readonly delta_v_spent: number;
    readonly delta_v_to_go: number;
  }[];
  readonly verdict: string;
  readonly orbit_lost_at_s: number | null;
}

/** From the project's folder, where tests and bundled scripts alike are started. */
const folder = pathToFileURL(`${process.cwd()}/tests/flights/`);

export function readTruth(name: ReferenceName): Truth {
  return JSON.parse(readFileSync(new URL(`${name}.truth.json`, folder), 'utf8'));
}

export function readCardText(name: ReferenceName): string {
  return readFileSync(new URL(`${name}.mission.json`, folder), 'utf8');
}

/** The columns of a hand pilot's log: time, altitude, speed, mass, throttle, pitch. */
const SIX = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle', 'pitch_deg'];

/** The flight's log cut down to some columns, every `every`-th row. */
export function cutLog(name: ReferenceName, columns: readonly string[] = SIX, every = 1): string {
  const lines = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trimEnd()
    .split('\n');
  const header = lines[0]!.split(',');
  const keep = columns.map((c) => header.indexOf(c));
  return lines
    .filter((_, i) => i === 0 || (i - 1) % every === 0)
    .map((line) => {
      const cells = line.split(',');
      return keep.map((k) => cells[k]).join(',');
    })
    .join('\n');
}

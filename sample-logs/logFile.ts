import { seededRandom } from '../src/attempts/seededRandom.ts';
import type { Track } from './flights.ts';

/** One column of a logger: header, the unit's size in SI, decimals that it prints. */
export interface Column {
  readonly header: string;
  readonly from: keyof Track;
  /** SI (rad for angles) to the logger's unit. */
  readonly perUnit: number;
  readonly decimals: number;
  /** Standard deviation of invented sensor noise, in the logger's unit; none where left out. */
  readonly noise?: number;
  /** Added to the value, in the logger's unit: another zero of the clock. */
  readonly offset?: number;
}

/** Normal deviate (Box & Muller 1958). */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Printed values, row by row. */
function printed(track: Track, columns: readonly Column[], seed: number): string[][] {
  const random = seededRandom(seed);
  return Array.from(track.time_s, (_, i) =>
    columns.map(({ from, perUnit, decimals, noise, offset }) => {
      const shake = noise === undefined ? 0 : noise * normal(random);
      const text = (track[from][i]! / perUnit + (offset ?? 0) + shake).toFixed(decimals);
      return /^-0(\.0*)?$/u.test(text) ? text.slice(1) : text;
    }),
  );
}

/** A log as delimited text. */
export function delimitedLog(
  track: Track,
  columns: readonly Column[],
  separator: string,
  seed: number,
): string {
  const lines = [columns.map((c) => c.header), ...printed(track, columns, seed)];
  return `${lines.map((cells) => cells.join(separator)).join('\n')}\n`;
}

/** A log as a JSON object of arrays. */
export function jsonLog(track: Track, columns: readonly Column[], seed: number): string {
  const rows = printed(track, columns, seed);
  const parts = columns.map(
    (c, k) => `${JSON.stringify(c.header)}:[${rows.map((r) => Number(r[k])).join(',')}]`,
  );
  return `{${parts.join(',\n')}}\n`;
}

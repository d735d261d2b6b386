import { parquetWriteBuffer } from 'hyparquet-writer/src/write.js';
import type { Analysis, StripName } from '../review/types.ts';
import { eventRows } from './eventRows.ts';
import { jsonLine } from './plainJson.ts';

/** Rows in a group: a reader of one stretch decodes no more than this. */
const GROUP = 100_000;

/**
 * A flight as one Apache Parquet file: a row for each row of the log, `time_s` from lift-off, the sampled channels as
 * doubles (null = missing), each with its unit in its name, and what happened at a row in `event`. Among the file's
 * key–value metadata stand `lossbook.units` and `lossbook.basis` (JSON, column → unit; column → measured, derived …)
 * and `lossbook.review`, the whole Review as `--json` prints it.
 * Source: Apache Parquet format 2, parquet.thrift; data pages compressed with Snappy.
 * @returns the file's bytes
 */
export function parquet({ review, strips }: Analysis): Uint8Array {
  const { time_s, channels } = strips;
  const names = Object.keys(channels) as StripName[];
  const happenings = eventRows(time_s, review.events);
  const events = Array.from(time_s, (_, row) => happenings.get(row) ?? null);
  const units = Object.fromEntries(['time_s', ...names].map((name) => [name, unitIn(name)]));
  const basis = Object.fromEntries(names.map((name) => [name, channels[name]?.basis]));
  return new Uint8Array(
    parquetWriteBuffer({
      columnData: [
        { name: 'time_s', type: 'DOUBLE', data: time_s, nullable: false },
        ...names.map((name) => ({
          name,
          type: 'DOUBLE' as const,
          data: orNull(channels[name]?.values ?? new Float64Array(time_s.length).fill(Number.NaN)),
        })),
        { name: 'event', type: 'STRING', data: events },
      ],
      rowGroupSize: GROUP,
      createdBy: 'lossbook',
      kvMetadata: [
        { key: 'lossbook.units', value: JSON.stringify(units) },
        { key: 'lossbook.basis', value: JSON.stringify(basis) },
        { key: 'lossbook.review', value: jsonLine(review).trimEnd() },
      ],
    }),
  );
}

/** Missing values as Parquet has them; typed values where none is missing. */
function orNull(values: Float64Array): Float64Array | (number | null)[] {
  return values.every(Number.isFinite) ? values : Array.from(values, (x) => (Number.isFinite(x) ? x : null));
}

/** The unit that a channel's name ends in: `verticalSpeed_m_s` → m/s, `acceleration_m_s2` → m/s^2, `mach` → 1. */
function unitIn(name: string): string {
  const [, unit, per] = /^[^_]+(?:_([A-Za-z]+)(?:_(.+))?)?$/u.exec(name) ?? [];
  if (unit === undefined) return '1';
  return per === undefined ? unit : `${unit}/${per.replace(/(\d)$/u, '^$1')}`;
}

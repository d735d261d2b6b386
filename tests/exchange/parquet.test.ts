import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { beforeAll, describe, expect, test } from 'vitest';
import { parquet } from '../../src/exchange/parquet.ts';
import { reviewJson } from '../../src/exchange/reviewJson.ts';
import type { Analysis, StripName } from '../../src/review/types.ts';
import { findUnitAnywhere } from '../../src/units/units.ts';
import { reviewSix } from '../review/reviewSix.ts';
import { handMadeReview } from './handMadeReview.ts';

/** The file as the reading package takes it. */
function fileOf(analysis: Analysis): ArrayBuffer {
  return Uint8Array.from(parquet(analysis)).buffer;
}

/** The file's key–value metadata, each value parsed. */
function notesOf(file: ArrayBuffer): Record<string, unknown> {
  const pairs = parquetMetadata(file).key_value_metadata ?? [];
  return Object.fromEntries(pairs.map(({ key, value }) => [key, JSON.parse(value ?? 'null')]));
}

describe('a flight as Parquet', () => {
  let analysis: Analysis;
  let file: ArrayBuffer;
  let rows: Record<string, unknown>[];
  beforeAll(async () => {
    analysis = await reviewSix('osselby-short', 10);
    file = fileOf(analysis);
    rows = await parquetReadObjects({ file });
  });

  test('every channel comes back as the same doubles, what is missing as null', () => {
    const { time_s, channels } = analysis.strips;
    expect(rows.map((row) => row.time_s)).toEqual([...time_s]);
    const names = Object.keys(channels) as StripName[];
    expect(names.length).toBeGreaterThan(15);
    expect(Object.keys(rows[0] ?? {})).toEqual(['time_s', ...names, 'event']);
    for (const name of names) {
      const expected = Array.from(channels[name]?.values ?? [], (x) => (Number.isFinite(x) ? x : null));
      expect(rows.map((row) => row[name])).toEqual(expected);
    }
    expect(rows.some((row) => names.some((name) => row[name] === null))).toBe(true);
  });

  test('events stand at the row nearest to their time', () => {
    const told = rows.flatMap(({ event }) => (typeof event === 'string' ? event.split('; ') : []));
    expect(told).toHaveLength(analysis.review.events.length);
    const cutoff = analysis.review.events.findLast((e) => e.name === 'cutoff');
    const row = rows.findLast(({ event }) => String(event).includes('cutoff'));
    const step_s = 1;
    expect(Math.abs(Number(row?.time_s) - (cutoff?.time_s ?? Number.NaN))).toBeLessThanOrEqual(step_s / 2);
  });

  test('units, bases and the whole review stand in its metadata', () => {
    const notes = notesOf(file);
    const units = notes['lossbook.units'] as Record<string, string>;
    expect(Object.keys(units)).toEqual(Object.keys(rows[0] ?? {}).filter((name) => name !== 'event'));
    expect(units).toMatchObject({
      time_s: 's',
      speed_m_s: 'm/s',
      acceleration_m_s2: 'm/s^2',
      dynamicPressure_Pa: 'Pa',
      throttle: '1',
    });
    // Each is a spelling that the table of units knows, and SI but for degrees.
    for (const unit of new Set(Object.values(units))) {
      if (unit !== '1') expect(findUnitAnywhere(unit), unit).not.toEqual([]);
    }
    expect(notes['lossbook.basis']).toMatchObject({ altitude_m: 'measured', drag_N: 'derived' });
    expect(notes['lossbook.review']).toEqual(JSON.parse(reviewJson(analysis.review)));
  });
});

test('a stretch of a long flight reads as the same stretch of the whole', async () => {
  const count = 250_001;
  const time_s = Float64Array.from({ length: count }, (_, i) => i / 64);
  const values = Float64Array.from(time_s, (t, i) => (i % 1000 === 999 ? Number.NaN : Math.sin(t)));
  const strips = { time_s, channels: { altitude_m: { values, basis: 'measured' as const } } };
  const file = fileOf({ review: handMadeReview(), strips });
  expect(parquetMetadata(file).row_groups.map((group) => Number(group.num_rows))).toEqual([
    100_000, 100_000, 50_001,
  ]);
  const [from, to] = [99_990, 200_010];
  const part = await parquetReadObjects({ file, columns: ['altitude_m'], rowStart: from, rowEnd: to });
  expect(part.map((row) => row.altitude_m)).toEqual(
    Array.from(values.subarray(from, to), (x) => (Number.isFinite(x) ? x : null)),
  );
});

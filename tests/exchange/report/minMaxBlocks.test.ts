import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blocksOf, minMaxBlocks, pictureRows } from '../../../src/exchange/report/minMaxBlocks.ts';

/** Rows at uneven times with gaps. */
const anyLog = fc
  .array(
    fc.tuple(fc.double({ min: 1e-3, max: 5, noNaN: true }), fc.option(fc.integer({ min: -1000, max: 1000 }))),
    {
      minLength: 2,
      maxLength: 1500,
    },
  )
  .map((rows) => {
    let t = 0;
    return {
      time_s: Float64Array.from(rows, ([step]) => {
        t += step;
        return t;
      }),
      values: Float64Array.from(rows, ([, v]) => v ?? Number.NaN),
    };
  });

test('however many rows a pixel holds, lowest and highest value of the stretch are drawn', () => {
  fc.assert(
    fc.property(
      anyLog,
      fc.integer({ min: 1, max: 60 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (log, columns, share) => {
        const last = log.time_s[log.time_s.length - 1] ?? 0;
        const start = share * 0.5 * last;
        const end = start + 0.5 * last;
        const rows = pictureRows(log.time_s, [minMaxBlocks(log.values)], start, end, columns);
        const inside = Array.from(log.values).filter(
          (v, i) => !Number.isNaN(v) && (log.time_s[i] ?? 0) >= start && (log.time_s[i] ?? 0) <= end,
        );
        const drawn = (rows.lines[0] ?? []).filter((v) => v !== null);
        if (inside.length === 0) return;
        for (const extreme of [Math.min(...inside), Math.max(...inside)]) expect(drawn).toContain(extreme);
        // Nothing is drawn that no row holds.
        for (const v of drawn) expect(Array.from(log.values)).toContain(v);
      },
    ),
    { numRuns: 60 },
  );
});

test('no more rows than two a pixel and one on each side; times never fall', () => {
  const n = 100_000;
  const time_s = Float64Array.from({ length: n }, (_, i) => i / 100);
  const values = time_s.map((t) => Math.sin(t));
  const rows = pictureRows(time_s, [blocksOf(values)], 100, 900, 500);
  expect(rows.time_s.length).toBeLessThanOrEqual(2 * 500 + 2);
  expect(rows.time_s.every((t, i) => i === 0 || t >= (rows.time_s[i - 1] ?? 0))).toBe(true);
  expect(rows.time_s[0]).toBeLessThanOrEqual(100);
  expect(rows.time_s.at(-1)).toBeGreaterThanOrEqual(900);
});

test('a spike of one row among a million is drawn, from far and from near', () => {
  const n = 1_000_000;
  const time_s = Float64Array.from({ length: n }, (_, i) => i / 1000);
  const values = new Float64Array(n).fill(1);
  values[654_321] = 99;
  for (const [start, end] of [
    [0, 1000],
    [600, 700],
    [654.3, 654.35],
  ] as const) {
    expect(pictureRows(time_s, [blocksOf(values)], start, end, 1000).lines[0]).toContain(99);
  }
});

test('few rows are kept as they are, missing values as gaps', () => {
  const rows = pictureRows([0, 1, 2, 3], [minMaxBlocks([5, Number.NaN, 7, 8])], 0, 3, 100);
  expect(rows).toEqual({ time_s: [0, 1, 2, 3], lines: [[5, null, 7, 8]] });
});

test('blocks of a list are made once', () => {
  const values = new Float64Array([1, 2, 3]);
  expect(blocksOf(values)).toBe(blocksOf(values));
});

import { describe, expect, test } from 'vitest';
import { orderRows, splitParts } from '../../src/log/timeAxis.ts';

const rise = (n: number, from = 0, step = 1): number[] =>
  Array.from({ length: n }, (_, i) => from + i * step);
const split = (times: number[], goesOn: boolean) => splitParts(Float64Array.from(times), () => goesOn);
const order = (times: number[]) => orderRows(Int32Array.from(times.keys()), Float64Array.from(times));

describe('splitParts', () => {
  test('one flight', () => {
    const { parts, notes } = split(rise(50), false);
    expect([parts.map((p) => p.length), notes]).toEqual([[50], []]);
  });

  test('a clock that begins again is another flight where the motion does not go on', () => {
    expect(split([...rise(50), ...rise(30), ...rise(20)], false).parts.map((p) => p.length)).toEqual([
      50, 30, 20,
    ]);
  });

  test('a few rows behind a reset are no flight', () => {
    expect(split([...rise(50), ...rise(4)], false).parts.map((p) => p.length)).toEqual([50]);
  });

  test('where the motion goes on the counter has wrapped: a byte of seconds, twice', () => {
    const { parts, time, notes } = split(
      rise(600).map((t) => t % 256),
      true,
    );
    expect(parts.length).toBe(1);
    expect([...time]).toEqual(rise(600));
    expect(notes.map((n) => [n.code, n.rows])).toEqual([
      ['clock-wrapped', [257, 257]],
      ['clock-wrapped', [513, 513]],
    ]);
  });

  test('a fall back so deep that the rows could not be told apart above it is no wrap', () => {
    const days = rise(21, 48000, 1e-4);
    const { parts, time } = split([...days, 480001111111, ...rise(24, 48000.0012, 1e-4)], true);
    expect(parts.map((p) => p.length)).toEqual([22, 24]);
    for (const part of parts) {
      const minutes = [...part].map((row) => time[row]! * 60);
      expect(minutes.every((t, k) => k === 0 || t > minutes[k - 1]!)).toBe(true);
    }
  });

  test('a single row from long ago starts nothing', () => {
    const times = rise(50);
    times[30] = 2;
    expect(split(times, false).parts.length).toBe(1);
  });

  test('a file that begins with its latest row is turned round', () => {
    const { parts, notes } = split(rise(30).reverse(), false);
    expect([parts.length, parts[0]?.[0], notes[0]?.code]).toEqual([1, 29, 'time-reversed']);
  });

  test('times without order are one flight', () => {
    expect(split([5, 1, 4, 2, 3, 0, 9, 7, 8, 6, 12, 11], false).parts.map((p) => p.length)).toEqual([12]);
  });

  test('rows without a time belong to no part', () => {
    expect([...(split([0, Number.NaN, ...rise(20, 1)], false).parts[0] ?? [])].slice(0, 3)).toEqual([
      0, 2, 3,
    ]);
  });
});

describe('orderRows', () => {
  test('times in order stay as they are', () => {
    expect(order([0, 1, 3])).toMatchObject({ notes: [] });
  });

  test('rows that come late are put in their place', () => {
    const { rows, time, notes } = order([0, 1, 3, 2, 4]);
    expect([...rows]).toEqual([0, 1, 3, 2, 4]);
    expect([...time]).toEqual([0, 1, 2, 3, 4]);
    expect(notes).toMatchObject([{ code: 'time-backsteps', rows: [4, 4], count: 1 }]);
  });

  test('of rows with one time the first is kept', () => {
    const { rows, notes } = order([0, 1, 1, 2, 3, 4, 5, 6, 7]);
    expect([...rows]).toEqual([0, 1, 3, 4, 5, 6, 7, 8]);
    expect(notes).toMatchObject([{ code: 'time-duplicates', rows: [3, 3], count: 1 }]);
  });

  test('stamps coarser than the rows are spread, a begun first second from its end', () => {
    const { time, notes } = order([0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3]);
    expect([...time]).toEqual([0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25]);
    expect(notes[0]?.code).toBe('time-coarse');
  });
});

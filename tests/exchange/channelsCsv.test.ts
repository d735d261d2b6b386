import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { channelsCsv } from '../../src/exchange/channelsCsv.ts';
import type { StripName, Strips } from '../../src/review/types.ts';
import { reviewSix } from '../review/reviewSix.ts';

const strips: Strips = {
  time_s: Float64Array.of(-0.1, 0, 0.1, 0.2),
  channels: {
    altitude_m: { values: Float64Array.of(0, 1 / 3, -1e-7, 1e21), basis: 'measured' },
    drag_N: { values: Float64Array.of(NaN, 0, -0, 5), basis: 'identified' },
  },
};

describe('channelsCsv', () => {
  test('has units in the header, a row a time, CRLF, and empty cells for what is missing', () => {
    const lines = channelsCsv(strips, []).split('\r\n');
    expect(lines[0]).toBe('time_s,altitude_m,drag_N,event');
    expect(lines[1]).toBe('-0.1,0,,');
    expect(lines).toHaveLength(6);
    expect(lines[5]).toBe('');
  });

  test('numbers come back as the same doubles, negative ones too', () => {
    const rows = channelsCsv(strips, []).trimEnd().split('\r\n').slice(1);
    expect(rows.map((row) => Number(row.split(',')[1]))).toEqual([0, 1 / 3, -1e-7, 1e21]);
    expect(rows.map((row) => Number(row.split(',')[0]))).toEqual([...strips.time_s]);
  });

  test('events stand at the nearest row, several joined, their subjects quoted', () => {
    const event = { planned_s: null, altitude_m: null, speed_m_s: null };
    const csv = channelsCsv(strips, [
      { ...event, name: 'cutoff', time_s: 0.12, subject: null },
      { ...event, name: 'separation', time_s: 0.14, subject: 'lower, "A"' },
      { ...event, name: 'touchdown', time_s: 99, subject: null },
    ]).split('\r\n');
    expect(csv[3]).toBe('0.1,-1e-7,0,"cutoff; separation (lower, ""A"")"');
    expect(csv[4]).toBe('0.2,1e+21,5,touchdown');
  });
});

test('a flight read back by another reader has the same cells', async () => {
  const { review, strips: flown } = await reviewSix('osselby-short', 20);
  const { data, errors } = Papa.parse<string[]>(channelsCsv(flown, review.events).trimEnd(), {
    newline: '\r\n',
  });
  expect(errors).toEqual([]);
  const [head, ...rows] = data;
  expect(rows).toHaveLength(flown.time_s.length);
  const names = Object.keys(flown.channels) as StripName[];
  expect(head).toEqual(['time_s', ...names, 'event']);
  names.forEach((name, k) => {
    const cells = rows.map((row) => (row[k + 1] === '' ? Number.NaN : Number(row[k + 1])));
    expect(cells, name).toEqual(
      Array.from(flown.channels[name]?.values ?? [], (x) => (Number.isFinite(x) ? x : NaN)),
    );
  });
});

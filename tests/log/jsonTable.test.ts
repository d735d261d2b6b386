import { describe, expect, test } from 'vitest';
import { jsonTable } from '../../src/log/jsonTable.ts';

const table = (value: unknown) => jsonTable({ lines: false, value, notes: [] }, 'x');
const shape = (value: unknown) => {
  const { form, columns, rows } = table(value);
  return { form, rows, columns: Object.fromEntries(columns.map((c) => [c.header, [...c.numbers]])) };
};

describe('jsonTable', () => {
  const wanted = { t: [0, 1], h: [5, 6] };

  test.each([
    [
      'array of objects',
      [
        { t: 0, h: 5 },
        { t: 1, h: 6 },
      ],
      'json-rows',
    ],
    ['object of arrays', { t: [0, 1], h: [5, 6] }, 'json-columns'],
    [
      'array of arrays',
      [
        ['t', 'h'],
        [0, 5],
        [1, 6],
      ],
      'json-columns',
    ],
    [
      'columns and data',
      {
        columns: ['t', 'h'],
        data: [
          [0, 5],
          [1, 6],
        ],
      },
      'json-columns',
    ],
    [
      'fields as objects',
      {
        fields: [{ name: 't' }, { name: 'h' }],
        rows: [
          [0, 5],
          [1, 6],
        ],
      },
      'json-columns',
    ],
    ['rows by number', { 0: { t: 0, h: 5 }, 1: { t: 1, h: 6 } }, 'json-rows'],
    ['columns by number', { t: { 0: 0, 1: 1 }, h: { 0: 5, 1: 6 } }, 'json-columns'],
    [
      'inside others',
      {
        meta: { a: [1, 2, 3] },
        log: {
          rows: [
            { t: 0, h: 5 },
            { t: 1, h: 6 },
          ],
        },
      },
      'json-rows',
    ],
  ])('%s', (_, value, form) => {
    expect(shape(value)).toEqual({ form, rows: 2, columns: wanted });
  });

  test('nested objects and vectors become paths', () => {
    expect(
      shape([
        { s: { h: 1 }, p: [1, 2, 3] },
        { s: { h: 2 }, p: [4, 5, 6] },
      ]).columns,
    ).toEqual({
      's.h': [1, 2],
      'p.x': [1, 4],
      'p.y': [2, 5],
      'p.z': [3, 6],
    });
  });

  test('units beside the samples, or around them', () => {
    const units = { t: 's', h: 'km' };
    expect(table({ units, t: [0, 1], h: [1, 2] }).columns.map((c) => c.unitsCell)).toEqual(['s', 'km']);
    expect(
      table({
        units,
        samples: [
          { t: 0, h: 1 },
          { t: 1, h: 2 },
        ],
      }).columns.map((c) => c.unitsCell),
    ).toEqual(['s', 'km']);
  });

  test('absent values are missing, text stays text', () => {
    const [t, e] = table([{ t: 0 }, { e: 'go' }, { t: 2, e: null }]).columns;
    expect([...(t?.numbers ?? [])]).toEqual([0, Number.NaN, 2]);
    expect([...(e?.texts ?? [])]).toEqual([[1, 'go']]);
  });

  test('names of the language are names like others', () => {
    const value: unknown = JSON.parse(
      '[{"__proto__": 1, "constructor": 2}, {"__proto__": 3, "constructor": 4}]',
    );
    expect(table(value).columns.map((c) => c.header)).toEqual(['__proto__', 'constructor']);
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  });

  test.each([[1], ['x'], [null], [[]], [{}], [{ a: 1 }], [[1, 2, 3]]])('%j holds no table', (value) => {
    expect(() => table(value)).toThrow(/no table/u);
  });

  test('too many columns are refused', () => {
    const row = Object.fromEntries(Array.from({ length: 1001 }, (_, i) => [`c${i}`, i]));
    expect(() => table([row, row])).toThrow(/1,000 columns/u);
    const keys = Object.fromEntries(Array.from({ length: 50_000 }, (_, i) => [`c${i}`, [1, 2]]));
    expect(() => table(keys)).toThrow();
  });
});

import { describe, expect, test } from 'vitest';
import { looksLikeJson } from '../../src/log/jsonMark.ts';
import { parseJson } from '../../src/log/jsonText.ts';

const rows = Array.from({ length: 30 }, (_, i) => ({ t: i, h: i * i }));

describe('parseJson', () => {
  test('a document', () => {
    expect(parseJson('{"a": [1]}', 'x')).toEqual({ lines: false, value: { a: [1] }, notes: [] });
  });

  test('NaN and Infinity outside of strings are null', () => {
    expect(parseJson('{"a": [NaN, -Infinity, "NaN"]}', 'x').value).toEqual({ a: [null, null, 'NaN'] });
  });

  test('one object a line', () => {
    const { lines, value } = parseJson(rows.map((row) => JSON.stringify(row)).join('\n'), 'x');
    expect([lines, value]).toEqual([true, rows]);
  });

  test('a cut last line is left out and noted', () => {
    const text = rows
      .map((row) => JSON.stringify(row))
      .join('\n')
      .slice(0, -3);
    const { value, notes } = parseJson(text, 'x');
    expect([(value as unknown[]).length, notes[0]?.code]).toEqual([29, 'broken-lines']);
  });

  test('an array that breaks off is read to its last whole row', () => {
    const { value, notes } = parseJson(`{"data": ${JSON.stringify(rows).slice(0, -5)}`, 'x');
    expect([value, notes[0]?.code]).toEqual([{ data: rows.slice(0, -1) }, 'cut-file']);
  });

  test('damage in the middle costs the damaged rows', () => {
    const many = Array.from({ length: 600 }, (_, i) => ({ t: i, h: i * i }));
    const { value, notes } = parseJson(JSON.stringify(many).replace('{"t":7,', '{"t":,'), 'x');
    expect([(value as unknown[]).length, notes[0]?.code]).toEqual([599, 'damaged-file']);
  });

  test('what cannot be mended is refused with its place', () => {
    expect(() => parseJson('{"time": [0, 1,\n 2, x]}', 'x')).toThrow(/line 2|“x”/u);
    expect(() => parseJson(`${'['.repeat(1e5)}`, 'x')).toThrow(/JSON/u);
  });
});

test('looksLikeJson', () => {
  expect(['{"a":1}', ' [1,2]', '[{"a":1}]', '{}', '[\n[1]]'].every(looksLikeJson)).toBe(true);
  expect(['[s],[m]', 'a,b', '', '{x}'].some(looksLikeJson)).toBe(false);
});

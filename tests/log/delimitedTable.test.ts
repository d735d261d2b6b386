import { describe, expect, test } from 'vitest';
import { delimitedTable } from '../../src/log/delimitedTable.ts';

const table = (text: string) => delimitedTable(text, 'x');
const columns = (text: string) =>
  Object.fromEntries(table(text).columns.map((column) => [column.header, [...column.numbers]]));

describe('delimitedTable', () => {
  test('numbers, texts and missing cells', () => {
    const { columns: found, rows } = table('a,b,c\n1,x,\n2,,NaN\n3,y,5\n');
    expect(rows).toBe(3);
    expect([...(found[0]?.numbers ?? [])]).toEqual([1, 2, 3]);
    expect([...(found[1]?.texts ?? [])]).toEqual([
      [0, 'x'],
      [2, 'y'],
    ]);
    expect([...(found[2]?.numbers ?? [])]).toEqual([Number.NaN, Number.NaN, 5]);
    expect([...(found[2]?.texts ?? [])]).toEqual([[1, 'NaN']]);
  });

  test('quotes guard separators, doubled quotes and line ends', () => {
    expect(columns('"a ""x""","b\n(m)"\n"1,5",2\n"2,5",3\n')).toEqual({
      'a "x"': [1.5, 2.5],
      'b\n(m)': [2, 3],
    });
  });

  test('a quote that belongs to a name is a letter', () => {
    expect(columns('t,alt (")\n1,2\n3,4\n')).toEqual({ t: [1, 3], 'alt (")': [2, 4] });
  });

  test('names parted by blanks may hold blanks', () => {
    expect(columns('Time (s)   Alt (km)\n  0.0   1.0\n  1.0   2.0\n')).toEqual({
      'Time (s)': [0, 1],
      'Alt (km)': [1, 2],
    });
    expect(columns('Elapsed time   Alt. over sea\n  0.0   1.0\n  1.0   2.0\n')).toEqual({
      'Elapsed time': [0, 1],
      'Alt. over sea': [1, 2],
    });
  });

  test('a unit behind every number goes to the column', () => {
    const [t, h] = table('t,h\n0 s,1.5 km\n1 s,2.5 km\n2 s,\n').columns;
    expect([t?.unitsCell, h?.unitsCell, [...(h?.numbers ?? [])]]).toEqual([
      's',
      'km',
      [1.5, 2.5, Number.NaN],
    ]);
  });

  test('columns without name and without content are left out', () => {
    expect(Object.keys(columns('a,,b,\n1,,2,\n3,,4,\n'))).toEqual(['a', 'b']);
    expect(Object.keys(columns('a,,b\n1,7,2\n3,8,4\n'))).toEqual(['a', 'column 2', 'b']);
  });

  test('what is passed over or cut is noted', () => {
    const { notes, rows } = table('a,b,c\n1,2,3\n# pause\na,b,c\n4,5\n6,7,8,9\nend\n7,8,9\n1,2');
    expect(rows).toBe(4);
    expect(notes.map((n) => [n.code, n.count])).toEqual([
      ['repeated-header', 1],
      ['short-rows', 1],
      ['long-rows', 1],
      ['stray-lines', 1],
      ['cut-last-row', 1],
    ]);
  });

  test('text of many pieces is read whole', () => {
    const rows = Array.from({ length: 300_000 }, (_, i) => `${i},"${i / 2}"`);
    const { columns: found } = table(`t,h\n${rows.join('\n')}\n`);
    expect([found[0]?.numbers.length, found[1]?.numbers[299_999]]).toEqual([300_000, 149_999.5]);
  });
});

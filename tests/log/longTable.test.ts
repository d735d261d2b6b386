import { expect, test } from 'vitest';
import { delimitedTable } from '../../src/log/delimitedTable.ts';
import { widened } from '../../src/log/longTable.ts';

const wide = (text: string) =>
  Object.fromEntries(
    widened(delimitedTable(text, 'x')).columns.map((column) => [column.header, [...column.numbers]]),
  );

test('one value a row becomes one column a channel', () => {
  expect(wide('t,channel,value\n0,h,1\n0,v,2\n1,h,3\n1,v,4\n2,v,6\n')).toEqual({
    t: [0, 1, 2],
    h: [1, 3, Number.NaN],
    v: [2, 4, 6],
  });
});

test('another table comes back as it is', () => {
  const table = delimitedTable('t,h,event\n0,1,go\n1,2,\n2,3,\n3,4,\n', 'x');
  expect(widened(table)).toBe(table);
});

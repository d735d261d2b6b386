import { expect, test } from 'vitest';
import { columnsCsv } from '../../src/exchange/columnsCsv.ts';

test('columns side by side, missing values empty, every double brought back', () => {
  const text = columnsCsv([
    { name: 'time_s', values: new Float64Array([0, 0.1 + 0.2]) },
    { name: 'margin_m_s', values: [null, -351.25, Number.NaN] },
  ]);
  expect(text).toBe('time_s,margin_m_s\r\n0,\r\n0.30000000000000004,-351.25\r\n,\r\n');
});

test('a name that a spreadsheet would run is made harmless', () => {
  expect(columnsCsv([{ name: '=1+1', values: [] }])).toBe("'=1+1\r\n");
});

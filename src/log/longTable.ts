import type { RawColumn, RawTable } from './rawTable.ts';

const labelHeaders =
  /^(?:channel|name|variable|signal|parameter|measurement|metric|field|key|sensor|series|label)s?$/iu;
const valueHeaders = /^(?:values?|reading|data|val)$/iu;
const MOST_CHANNELS = 200;

/**
 * A table with one value a row (time, channel, value) turned into one with a column for each channel; any other
 * table comes back as it is.
 */
export function widened(table: RawTable): RawTable {
  const label = table.columns.find(
    (column) => labelHeaders.test(column.header.trim()) && column.texts.size > 0.9 * table.rows,
  );
  const value = table.columns.find((column) => valueHeaders.test(column.header.trim()));
  const key = table.columns.find((column) => column !== label && column !== value);
  if (label === undefined || value === undefined || key === undefined || table.rows < 4) return table;
  const names = [...new Set(label.texts.values())];
  if (names.length < 2 || names.length > MOST_CHANNELS) return table;
  // Rows of one time belong together wherever they stand.
  const rowOf = new Map<number | string, number>();
  const keyAt = (row: number): number | string => {
    const x = key.numbers[row] ?? Number.NaN;
    return Number.isNaN(x) ? (key.texts.get(row) ?? '') : x;
  };
  for (let row = 0; row < table.rows; row++) if (!rowOf.has(keyAt(row))) rowOf.set(keyAt(row), rowOf.size);
  const rows = rowOf.size;
  const times: RawColumn = { ...key, numbers: new Float64Array(rows).fill(Number.NaN), texts: new Map() };
  const keyTexts = new Map<number, string>();
  for (const [written, row] of rowOf) {
    if (typeof written === 'number') times.numbers[row] = written;
    else if (written !== '') keyTexts.set(row, written);
  }
  const columns = names.map((header) => ({
    header,
    unitsCell: null,
    numbers: new Float64Array(rows).fill(Number.NaN),
    texts: new Map<number, string>(),
  }));
  const byName = new Map(columns.map((column) => [column.header, column] as const));
  for (const [row, name] of label.texts) {
    const column = byName.get(name);
    const at = rowOf.get(keyAt(row));
    if (column === undefined || at === undefined) continue;
    const x = value.numbers[row] ?? Number.NaN;
    const text = value.texts.get(row);
    if (!Number.isNaN(x)) column.numbers[at] = x;
    else if (text !== undefined) column.texts.set(at, text);
  }
  return { ...table, rows, columns: [{ ...times, texts: keyTexts }, ...columns] };
}

import { csvCell } from './csvCell.ts';

/** A column of numbers; its name carries the unit: `margin_m_s`. */
export interface CsvColumn {
  readonly name: string;
  readonly values: ArrayLike<number | null>;
}

/** Columns of numbers as RFC 4180 CSV, as many digits as bring the same double back; missing values are empty. */
export function columnsCsv(columns: readonly CsvColumn[]): string {
  const rows = Math.max(0, ...columns.map((c) => c.values.length));
  const lines = [columns.map((c) => csvCell(c.name)).join(',')];
  for (let i = 0; i < rows; i++) {
    lines.push(
      columns
        .map(({ values }) => {
          const v = values[i];
          return v === null || v === undefined || !Number.isFinite(v) ? '' : String(v);
        })
        .join(','),
    );
  }
  return `${lines.join('\r\n')}\r\n`;
}

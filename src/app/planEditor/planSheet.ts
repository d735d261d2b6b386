import type { TableCell } from '../../plan/cellTable.ts';
import type { PlanAxis } from '../../plan/types.ts';

/** A cell: a number in the unit of the file, what was written where that is no number, null for an empty one. */
export type Cell = TableCell;

export const columns = ['at', 'pitch', 'throttle', 'event'] as const;
export type ColumnName = (typeof columns)[number];

/** One row of a plan while it is written. */
export interface PlanRow {
  /** Stays with the row wherever it moves. */
  readonly id: number;
  /** s, m or m/s by the axis. */
  readonly at: Cell;
  /** ° above the horizon. */
  readonly pitch: Cell;
  /** %. */
  readonly throttle: Cell;
  readonly event: Cell;
}

/** A plan while it is written, perhaps not yet acceptable. */
export interface PlanSheet {
  /** File name. */
  readonly name: string;
  readonly axis: PlanAxis;
  readonly rows: readonly PlanRow[];
}

const axisHeaders = { time: 'time_s', altitude: 'altitude_m', speed: 'speed_m_s' } as const;

let lastId = 0;

/** A row with these cells; those not named are empty. */
export function row(cells: Partial<Omit<PlanRow, 'id'>> = {}): PlanRow {
  lastId += 1;
  return { at: null, pitch: null, throttle: null, event: null, ...cells, id: lastId };
}

export function blankSheet(name: string, axis: PlanAxis = 'time'): PlanSheet {
  return { name, axis, rows: [row(), row(), row()] };
}

/** True where no cell holds anything. */
function isEmptyRow(r: PlanRow): boolean {
  return columns.every((c) => r[c] === null);
}

/** The rows that stand in the file, in its order: empty ones are left out. */
export function filledRows({ rows }: PlanSheet): readonly PlanRow[] {
  return rows.filter((r) => !isEmptyRow(r));
}

function cellText(cell: Cell): string {
  const text = cell === null ? '' : String(cell);
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The column of the file that each column of the sheet is. */
export function fileHeader(axis: PlanAxis, column: ColumnName): string {
  return { at: axisHeaders[axis], pitch: 'pitch_deg', throttle: 'throttle_percent', event: 'event' }[column];
}

/** The sheet as headers and rows of a file; a column that is empty throughout is left out. */
export function sheetTable(sheet: PlanSheet): {
  readonly headers: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
} {
  const rows = filledRows(sheet);
  const used = columns.filter((c) => c === 'at' || rows.some((r) => r[c] !== null));
  return {
    headers: used.map((c) => fileHeader(sheet.axis, c)),
    rows: rows.map((r) => used.map((c) => r[c])),
  };
}

/** The sheet as the `*.plan.csv` that the engine reads. */
export function sheetText(sheet: PlanSheet): string {
  const { headers, rows } = sheetTable(sheet);
  const lines = [headers, ...rows.map((cells) => cells.map(cellText))];
  return `${lines.map((cells) => cells.join(',')).join('\r\n')}\r\n`;
}

/** Digits that a change of unit leaves behind are dropped. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

function splitRow(line: string): readonly string[] {
  return [...line.matchAll(/(?:"((?:[^"]|"")*)"|([^,]*))(?:,|$)/gu)].map(([, quoted, plain]) =>
    quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'),
  );
}

/**
 * The sheet of a text that `sheetText` or the engine's `writePlan` wrote.
 * @param most rows that a sheet may have
 * @returns null for any other text, and for more rows: the engine makes a sheet of those
 */
export function sheetOf(name: string, text: string, most: number): PlanSheet | null {
  const [head = '', ...lines] = text.trimEnd().split(/\r\n|\n/u);
  const headers = head.split(',');
  const axis = (Object.keys(axisHeaders) as PlanAxis[]).find((a) => axisHeaders[a] === headers[0]);
  if (axis === undefined || lines.length > most) return null;
  const scales: Readonly<Record<string, readonly [ColumnName, number]>> = {
    [axisHeaders[axis]]: ['at', 1],
    pitch_deg: ['pitch', 1],
    throttle: ['throttle', 100],
    throttle_percent: ['throttle', 1],
    event: ['event', 1],
  };
  if (
    headers.some((h) => !Object.hasOwn(scales, h)) ||
    new Set(headers.map((h) => scales[h]?.[0])).size < headers.length
  )
    return null;
  const rows = lines.map((line) => {
    const cells: Partial<Record<ColumnName, Cell>> = {};
    splitRow(line).forEach((text, i) => {
      const [column, scale] = scales[headers[i] ?? ''] ?? [];
      if (column === undefined || scale === undefined || text === '') return;
      const value = column === 'event' ? Number.NaN : Number(text);
      cells[column] = Number.isFinite(value) ? tidy(value * scale) : text;
    });
    return row(cells);
  });
  return { name, axis, rows };
}

import { LossbookError } from '../errors.ts';
import { type JsonSeries, namedSeries, pointSeries } from './jsonSeries.ts';
import type { JsonContent } from './jsonText.ts';
import { logLimits, withinLimit } from './limits.ts';
import { guessNumberStyle } from './numbers.ts';
import { ColumnBuilder, type RawTable } from './rawTable.ts';

type JsonObject = Readonly<Record<string, unknown>>;

/** A table as found inside a JSON document. */
type Found =
  | { readonly kind: 'rows'; readonly rows: readonly JsonObject[]; readonly units: JsonObject | null }
  | {
      readonly kind: 'columns';
      readonly columns: readonly (readonly [string, readonly unknown[]])[];
      readonly units: JsonObject | null;
    };

/**
 * Reads a JSON document into a table: an array of objects, an object of arrays, an array of arrays with names
 * beside or before them, JSON lines, each also inside other objects. Nested objects become `outer.inner`,
 * vectors of three `name.x`, `name.y`, `name.z`.
 * @throws LossbookError `log-no-table`, `log-too-large`.
 */
export function jsonTable(content: JsonContent, name: string): RawTable {
  const found = largest(content.value);
  if (found === null) throw new LossbookError('log-no-table', {}, { file: name });
  const table =
    found.kind === 'rows'
      ? fromRows(found.rows, found.units, name)
      : fromColumns(found.columns, found.units, name);
  const form = content.lines ? 'json-lines' : found.kind === 'rows' ? 'json-rows' : 'json-columns';
  return { ...table, form, named: true, notes: content.notes };
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isScalar(value: unknown): boolean {
  return value === null || typeof value !== 'object';
}

function sizeOf(found: Found): number {
  return found.kind === 'rows'
    ? found.rows.length
    : Math.max(0, ...found.columns.map(([, cells]) => cells.length));
}

/** A value inside the document with the units named around it. */
interface Inner {
  readonly value: unknown;
  readonly units: JsonObject | null;
}

/** The table with most rows, looking into objects breadth first. */
function largest(root: unknown): Found | null {
  let best: Found | null = null;
  let level: Inner[] = [{ value: root, units: null }];
  for (let depth = 0; depth < logLimits.jsonDepth && level.length > 0; depth++) {
    const next: Inner[] = [];
    for (const { value, units: outer } of level) {
      const units = isObject(value) ? (unitsIn(value) ?? outer) : outer;
      const found = tableAt(value, units);
      if (found !== null && (best === null || sizeOf(found) > sizeOf(best))) best = found;
      const inside = (inner: unknown): Inner => ({ value: inner, units });
      if (isObject(value)) next.push(...Object.values(value).slice(0, logLimits.columns).map(inside));
      else if (Array.isArray(value) && value.length <= 100)
        next.push(...value.filter((inner) => !isScalar(inner)).map(inside));
    }
    level = next.slice(0, 10_000);
  }
  return best;
}

function tableAt(value: unknown, units: JsonObject | null): Found | null {
  if (Array.isArray(value)) return arrayTable(value, null, units);
  if (!isObject(value)) return null;
  const entries = Object.entries(value);
  // Rows as arrays, their names in a list of their own.
  const names = entries.find(
    ([key, list]) =>
      /^(?:columns?|fields?|headers?|names?|channels?|keys)$/iu.test(key) && Array.isArray(list),
  )?.[1] as unknown[] | undefined;
  const lists = entries.filter((entry): entry is [string, unknown[]] => Array.isArray(entry[1]));
  if (names !== undefined) {
    const rows = lists.find(
      ([, list]) => list.length > 0 && list !== names && list.every(Array.isArray),
    )?.[1];
    const labels = names.map((label) => (isObject(label) ? String(label.name ?? '') : String(label)));
    const unitRow = entries.find(([key, list]) => /^units?$/iu.test(key) && Array.isArray(list))?.[1] as
      | unknown[]
      | undefined;
    if (rows !== undefined) return arrayTable([labels, ...rows], unitRow ?? null, units);
  }
  const points = pointSeries(value, units);
  if (points !== null) return seriesTable(points);
  const scalars = lists.filter(
    ([, list]) => list.length >= 2 && list.every((cell) => isScalar(cell) || isVector(cell)),
  );
  if (scalars.length >= 2 && scalars.length <= 20 * logLimits.columns) {
    const lengths = new Map<number, number>();
    for (const [, list] of scalars) lengths.set(list.length, (lengths.get(list.length) ?? 0) + 1);
    const [common, count] = [...lengths].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [0, 0];
    // Short lists beside the samples (limits, a vector of settings) are no columns.
    if (count >= 2) {
      const longest = Math.max(...[...lengths.keys()].filter((n) => n <= 1.05 * common + 1));
      return {
        kind: 'columns',
        columns: scalars.filter(([, list]) => list.length <= longest && list.length >= 0.5 * common),
        units,
      };
    }
  }
  return keyedTable(entries, units);
}

/** An object of objects: by row (`{"0": {…}}`) or by column with rows numbered inside (`{"time": {"0": …}}`). */
function keyedTable(
  entries: readonly (readonly [string, unknown])[],
  units: JsonObject | null,
): Found | null {
  const inner = entries.filter((entry): entry is [string, JsonObject] => isObject(entry[1]));
  if (inner.length < 2) return null;
  const numbered = (keys: readonly string[]): boolean =>
    keys.length >= 2 && keys.every((key) => /^\d+(?:\.\d+)?$/u.test(key));
  if (inner.length === entries.length && numbered(entries.map(([key]) => key))) {
    return { kind: 'rows', rows: inner.map(([, row]) => row), units };
  }
  const columns = inner.filter(
    ([, cells]) => numbered(Object.keys(cells)) && Object.values(cells).every(isScalar),
  );
  if (columns.length < 2) return null;
  return {
    kind: 'columns',
    columns: columns.map(([key, cells]) => [key, Object.values(cells)] as const),
    units,
  };
}

function seriesTable(series: readonly JsonSeries[]): Found {
  return {
    kind: 'columns',
    columns: series.map(({ name, cells }) => [name, cells] as const),
    units: Object.fromEntries(series.map(({ name, unit }) => [name, unit])),
  };
}

function arrayTable(
  list: readonly unknown[],
  unitRow: readonly unknown[] | null,
  outer: JsonObject | null,
): Found | null {
  const series = namedSeries(list);
  if (series !== null) return seriesTable(series);
  const objects = list.filter(isObject);
  if (objects.length >= 1 && objects.length >= 0.5 * list.length)
    return { kind: 'rows', rows: objects, units: outer };
  const arrays = list.filter((row): row is unknown[] => Array.isArray(row));
  const [first, ...rows] = arrays;
  if (first === undefined || arrays.length < 2 || arrays.length < 0.9 * list.length) return null;
  const named =
    first.length >= 2 &&
    first.every((cell) => typeof cell === 'string' && !/^[+-]?[\d.]+$/u.test(cell.trim()));
  const body = named ? rows : arrays;
  const width = first.length;
  if (width < 2 || width > logLimits.columns) return null;
  const columns = Array.from({ length: width }, (_, i): [string, unknown[]] => [
    named ? String(first[i]) : `column ${i + 1}`,
    body.map((row) => row[i] ?? null),
  ]);
  const units = unitRow === null ? outer : Object.fromEntries(columns.map(([key], i) => [key, unitRow[i]]));
  return { kind: 'columns', columns, units };
}

/** The object that names units by column, where there is one. */
function unitsIn(value: JsonObject): JsonObject | null {
  const found = Object.entries(value).find(([key]) => /^units?$/iu.test(key))?.[1];
  return isObject(found) ? found : null;
}

function isVector(value: unknown): value is readonly unknown[] {
  return Array.isArray(value) && value.length >= 2 && value.length <= 4 && value.every(isScalar);
}

const axes = ['x', 'y', 'z', 'w'];

/** Puts a value and what it nests into `put`, by path. */
function flatten(
  value: unknown,
  path: string,
  depth: number,
  put: (path: string, cell: unknown) => void,
): void {
  if (isScalar(value)) put(path, value);
  else if (isVector(value)) {
    for (const [i, cell] of value.entries()) put(`${path}.${axes[i] ?? i}`, cell);
  } else if (isObject(value) && depth < logLimits.jsonDepth) {
    for (const [key, inner] of Object.entries(value))
      flatten(inner, path === '' ? key : `${path}.${key}`, depth + 1, put);
  }
}

type Body = Pick<RawTable, 'columns' | 'rows'>;

/** Columns in order of their first appearance. */
class Columns {
  private readonly builders = new Map<string, ColumnBuilder>();
  private readonly style: ReturnType<typeof guessNumberStyle>;
  private readonly name: string;

  constructor(sample: Iterable<string>, name: string) {
    this.style = guessNumberStyle(sample);
    this.name = name;
  }

  put(row: number, path: string, cell: unknown): void {
    let builder = this.builders.get(path);
    if (builder === undefined) {
      builder = new ColumnBuilder(this.style);
      this.builders.set(path, builder);
      withinLimit('columns', this.builders.size, this.name);
    }
    if (typeof cell === 'number') builder.putNumber(row, Number.isFinite(cell) ? cell : Number.NaN);
    else if (typeof cell === 'boolean') builder.putNumber(row, cell ? 1 : 0);
    else if (typeof cell === 'string') builder.putText(row, cell);
    else builder.putNumber(row, Number.NaN);
  }

  finish(rows: number, units: JsonObject | null): Body {
    const columns = [...this.builders].map(([path, builder]) => {
      const unit = units !== null && Object.hasOwn(units, path) ? units[path] : null;
      return builder.finish(path.trim() || 'unnamed', typeof unit === 'string' ? unit : null, rows);
    });
    return { columns, rows };
  }
}

function* stringsOf(cells: Iterable<unknown>): Iterable<string> {
  let left = 5000;
  for (const cell of cells) {
    if (typeof cell === 'string') yield cell;
    if (--left < 0) return;
  }
}

function fromRows(rows: readonly JsonObject[], units: JsonObject | null, name: string): Body {
  withinLimit('rows', rows.length, name);
  const columns = new Columns(stringsOf(rows.slice(0, 200).flatMap((row) => Object.values(row))), name);
  rows.forEach((row, i) => {
    flatten(row, '', 0, (path, cell) => columns.put(i, path, cell));
  });
  return columns.finish(rows.length, units);
}

function fromColumns(
  lists: readonly (readonly [string, readonly unknown[]])[],
  units: JsonObject | null,
  name: string,
): Body {
  const rows = Math.max(0, ...lists.map(([, cells]) => cells.length));
  withinLimit('rows', rows, name);
  const columns = new Columns(stringsOf(lists.flatMap(([, cells]) => cells.slice(0, 200))), name);
  for (const [key, cells] of lists) {
    cells.forEach((cell, i) => {
      flatten(cell, key, 1, (path, inner) => columns.put(i, path, inner));
    });
  }
  return columns.finish(rows, units);
}

import { findUnitAnywhere } from '../units/units.ts';
import { isDataCell } from './separator.ts';

/** Where a text table begins and what its columns are called. */
export interface TableHead {
  /** Index of the first row of data among the rows looked at. */
  readonly firstData: number;
  /** Header cells as written; null where no row names the columns. */
  readonly headers: readonly string[] | null;
  readonly units: readonly string[] | null;
}

const commentMark = /^\s*(?:#|\/\/|%(?!\s*[,;\t|])|!|--\s|\*)\s*/u;

/** True for a line that its first cell marks as a comment. */
export function isComment(firstCell: string): boolean {
  return commentMark.test(firstCell);
}

/** True for a ruled line such as `|----|:---:|` or `=====`. */
export function isRule(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[\s:=+_|-]*$/u.test(cell)) && cells.some((cell) => /[=_-]{2}/u.test(cell));
}

function filledCells(cells: readonly string[]): string[] {
  return cells.filter((cell) => cell.trim() !== '');
}

/** True for a row with at least two values, in which values are at least half of what it holds. */
function isDataRow(cells: readonly string[]): boolean {
  const filled = filledCells(cells);
  const values = filled.filter(isDataCell).length;
  // A row of missing marks alone says nothing, nor does one without any digit.
  return (
    values >= 2 &&
    values >= 0.5 * filled.length &&
    filled.some((cell) => /\d/u.test(cell) && isDataCell(cell))
  );
}

/** A row of full width with a value or two and otherwise nothing. */
function isSparseRow(cells: readonly string[], width: number): boolean {
  const filled = filledCells(cells);
  const values = filled.filter((cell) => isDataCell(cell) && /\d/u.test(cell)).length;
  return cells.length === width && values >= 1 && values >= 0.5 * filled.length && !isComment(cells[0] ?? '');
}

function isNamesRow(cells: readonly string[], width: number): boolean {
  const filled = filledCells(cells);
  const names = filled.filter((cell) => !isDataCell(cell)).length;
  return filled.length >= 2 && filled.length >= 0.5 * width && names >= 0.7 * filled.length;
}

function isUnitsRow(cells: readonly string[]): boolean {
  const filled = filledCells(cells);
  const units = filled.filter((cell) => findUnitAnywhere(cell).length > 0).length;
  const open = filled.filter((cell) =>
    /^[[(]?\s*(?:-+|text|string|utc|n\/a|#)?\s*[\])]?$/iu.test(cell.trim()),
  ).length;
  return units >= 1 && units + open >= 0.8 * filled.length;
}

/**
 * Names that come twice (`X`, `Y`, `X`, `Y`) take the name of the group that stands above them, which is written
 * once for the columns that follow.
 */
function underGroups(names: readonly string[], groups: readonly string[] | undefined): readonly string[] {
  const plain = names.map((name) =>
    name
      .replace(/[[(].*$/u, '')
      .trim()
      .toLowerCase(),
  );
  const twice = plain.some((name, i) => name !== '' && plain.indexOf(name) !== i);
  if (!twice || groups === undefined || groups.length !== names.length) return names;
  if (filledCells(groups).length < 2 || groups.some(isDataCell)) return names;
  let group = '';
  return names.map((name, i) => {
    const here = (groups[i] ?? '').trim();
    if (here !== '') group = here;
    return group === '' || group.toLowerCase() === name.trim().toLowerCase()
      ? name
      : `${group} ${name}`.trim();
  });
}

/**
 * Finds the first row of data of about `width` cells, the row of names above it and, between them, a row of
 * units. Lines before that are a preamble. A comment line counts as a name row without its mark.
 */
export function findHead(rows: readonly (readonly string[])[], width: number): TableHead | null {
  const fullData = rows.findIndex((cells, i) => {
    if (!isDataRow(cells) || isComment(cells[0] ?? '') || filledCells(cells).length < 0.4 * width)
      return false;
    const next = rows.slice(i + 1).find((later) => filledCells(later).length > 0);
    return next === undefined || isDataRow(next) || Math.abs(next.length - width) > 0;
  });
  if (fullData < 0) return null;
  // A log may begin with rows in which little is known yet.
  let firstData = fullData;
  while (firstData > 0 && isSparseRow(rows[firstData - 1] ?? [], width)) firstData--;
  const above: string[][] = [];
  for (let i = firstData - 1; i >= 0 && above.length < 3; i--) {
    const cells = rows[i] ?? [];
    if (filledCells(cells).length === 0 || isRule(cells)) continue;
    above.push([(cells[0] ?? '').replace(commentMark, ''), ...cells.slice(1)]);
  }
  const [near, far] = above;
  if (near === undefined) return { firstData, headers: null, units: null };
  if (far !== undefined && isUnitsRow(near) && isNamesRow(far, width)) {
    return { firstData, headers: underGroups(far, above[2]), units: near };
  }
  return { firstData, headers: isNamesRow(near, width) ? underGroups(near, far) : null, units: null };
}

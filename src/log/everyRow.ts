let last: WeakRef<Int32Array> | null = null;

/** All rows of a table, in the order of the file; to be looked at only, for columns of one length share it. */
export function everyRow(count: number): Int32Array {
  const known = last?.deref();
  if (known?.length === count) return known;
  const rows = new Int32Array(count);
  for (let row = 0; row < count; row++) rows[row] = row;
  last = new WeakRef(rows);
  return rows;
}

/** Whether these are all rows of a table, in the order of the file. */
export function areAllRows(rows: Int32Array, count: number): boolean {
  if (rows.length !== count) return false;
  if (rows === last?.deref()) return true;
  for (let row = 0; row < count; row++) if (rows[row] !== row) return false;
  return true;
}

import { type ComponentChildren, Fragment } from 'preact';

/** One column of a table: its head, and what a row has in it. The first column names the row. */
export interface TableColumn<R> {
  readonly head: string;
  readonly unit?: string;
  /** `number` stands at the right; words at the left. */
  readonly kind?: 'number' | 'words';
  /** Of head and cells: `more` for what a narrow screen leaves out, `basis`. */
  readonly look?: string;
  /** Of the cells alone: `quiet`, `strong-cell`, `unit`. */
  readonly cellLook?: string;
  readonly cell: (row: R) => ComponentChildren;
}

interface Props<R> {
  readonly columns: readonly TableColumn<R>[];
  readonly rows: readonly R[];
  readonly keyOf: (row: R) => string | number;
  /** Of the table, besides `figures`. */
  readonly look?: string;
  /** Name of the region that scrolls where the table is wider than the screen; absent for one that never is. */
  readonly scrolls?: string;
  /** A sentence under each row. */
  readonly told?: (row: R) => ComponentChildren;
}

function looks(...names: readonly (string | false | undefined)[]): string | undefined {
  return names.filter(Boolean).join(' ') || undefined;
}

/** A table of figures told by its columns. */
export function ColumnTable<R>({ columns, rows, keyOf, look, scrolls, told }: Props<R>) {
  const [first, ...others] = columns;
  if (first === undefined) return null;
  const table = (
    <table class={looks('figures', look)}>
      <thead>
        <tr>
          {columns.map(({ head, unit, kind, look: own }, i) => (
            <th key={`${i} ${head}`} scope="col" class={looks(kind === 'number' && 'number', own)}>
              {head}
              {unit === undefined || unit === '' ? null : <span class="unit"> {unit}</span>}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Fragment key={keyOf(row)}>
            <tr class={told === undefined ? undefined : 'explained'}>
              <th scope="row">{first.cell(row)}</th>
              {others.map(({ head, kind, look: own, cellLook, cell }, i) => (
                <td key={`${i} ${head}`} class={looks(kind === 'number' && 'number', own, cellLook)}>
                  {cell(row)}
                </td>
              ))}
            </tr>
            {told === undefined ? null : (
              <tr>
                <td class="told" colSpan={columns.length}>
                  <span>{told(row)}</span>
                </td>
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
  if (scrolls === undefined) return table;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="wide" aria-label={scrolls} tabIndex={0}>
      {table}
    </section>
  );
}

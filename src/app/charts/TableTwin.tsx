import { useState } from 'preact/hooks';
import { numberText } from '../../exchange/figureText.ts';
import type { Span } from '../../exchange/report/plotFrame.ts';
import { indexAt } from '../../exchange/sampleAt.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import { readingText, timeText } from '../figureText.ts';
import { shownIn } from '../units.ts';
import { span as shownSpan } from './timeFrame.ts';

export interface TwinColumn {
  readonly label: string;
  readonly unit: string;
  /** A value for each row, or what tells it at a time. */
  readonly values: ArrayLike<number | null> | ((time_s: number) => number);
  /** Shown value = stored value × scale. */
  readonly scale: number;
}

interface Props {
  readonly name: string;
  readonly time_s: ArrayLike<number>;
  readonly columns: readonly TwinColumn[];
}

/** Most rows that are shown; a longer stretch is thinned evenly. */
const rowLimit = 120;

/** Indices of the rows of a stretch, thinned evenly to the limit, ends kept. */
function rowsIn(time_s: ArrayLike<number>, span: Span): number[] {
  const first = Math.max(0, indexAt(time_s, span.start_s - 1e-9) + 1);
  const last = indexAt(time_s, span.end_s + 1e-9);
  const count = last - first + 1;
  if (count <= rowLimit) return Array.from({ length: Math.max(0, count) }, (_, i) => first + i);
  return Array.from({ length: rowLimit }, (_, i) => first + Math.round((i * (count - 1)) / (rowLimit - 1)));
}

/** A reading of a chart's table; a dash for none. */
export function cellText(value: number | null | undefined, scale: number): string {
  return value === null || value === undefined || Number.isNaN(value)
    ? NO_FIGURE
    : readingText(value * scale);
}

/** The numbers behind a chart, over the stretch that the chart shows. Built when it is opened. */
export function TableTwin({ name, time_s, columns }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <details class="twin" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>{name}</summary>
      {open ? (
        <TwinTable
          name={name}
          time_s={time_s}
          columns={columns.map((c) => ({ ...c, ...shownIn(c.unit, c.scale) }))}
        />
      ) : null}
    </details>
  );
}

function cellValue({ values }: TwinColumn, row: number, time_s: number): number | null | undefined {
  return typeof values === 'function' ? values(time_s) : values[row];
}

function TwinTable({ name, time_s, columns }: Props) {
  const span = shownSpan.value;
  const rows = rowsIn(time_s, span);
  const used = columns.filter(
    ({ values }) =>
      typeof values === 'function' ||
      Array.prototype.some.call(values, (v) => v !== null && !Number.isNaN(v)),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="twin-scroll" aria-label={name} tabIndex={0}>
      <table>
        <caption class="quiet">
          {timeText(span.start_s)} to {timeText(span.end_s)}, {rows.length} rows
        </caption>
        <thead>
          <tr>
            <th scope="col">
              time <span class="quiet">s</span>
            </th>
            {used.map((c) => (
              <th key={c.label} scope="col">
                {c.label} <span class="quiet">{c.unit}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => (
            <tr key={i}>
              <th scope="row">{numberText(time_s[i] ?? 0, 1)}</th>
              {used.map((c) => (
                <td key={c.label}>{cellText(cellValue(c, i, time_s[i] ?? 0), c.scale)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

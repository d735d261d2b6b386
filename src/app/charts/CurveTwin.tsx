import { useState } from 'preact/hooks';
import type { Curve, CurveAxis } from '../../exchange/report/curveChart.ts';
import { cellText } from './TableTwin.tsx';

interface Props {
  readonly name: string;
  readonly at: ArrayLike<number>;
  readonly x: CurveAxis;
  readonly y: CurveAxis;
  readonly curves: readonly Curve[];
}

/** Most rows that are shown; more are thinned evenly, ends kept. */
const rowLimit = 61;

/** The numbers behind a chart over another axis than time. Built when it is opened. */
export function CurveTwin(props: Props) {
  const [open, setOpen] = useState(false);
  return (
    <details class="twin" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>{props.name}</summary>
      {open ? <TwinTable {...props} /> : null}
    </details>
  );
}

function TwinTable({ name, at, x, y, curves }: Props) {
  const count = Math.min(at.length, rowLimit);
  const rows = Array.from({ length: count }, (_, i) =>
    count < 2 ? i : Math.round((i * (at.length - 1)) / (count - 1)),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="twin-scroll" aria-label={name} tabIndex={0}>
      <table>
        <caption class="quiet">
          {y.label === '' ? name : y.label}
          {y.unit === '' ? '' : `, ${y.unit}`}, {rows.length} rows
        </caption>
        <thead>
          <tr>
            <th scope="col">
              {x.label} <span class="quiet">{x.unit}</span>
            </th>
            {curves.map((c) => (
              <th key={c.name} scope="col">
                {c.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => (
            <tr key={i}>
              <th scope="row">{cellText(at[i], x.scale)}</th>
              {curves.map((c) => (
                <td key={c.name}>{cellText(c.values[i], y.scale)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

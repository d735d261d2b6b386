import { valueAt } from '../sampleAt.ts';
import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough } from './drawing.ts';
import type { HeroCurve } from './heroCurve.ts';
import { letter, mark } from './marginLabel.ts';
import type { Overlay } from './overlay.ts';
import type { Span } from './plotFrame.ts';

/** The margins of plans and other flights, dashed. */
export function planLines(
  planned: readonly Overlay[],
  x: (t: number) => number,
  y: (v: number) => number,
): Drawing[] {
  return planned.map(({ margin }) =>
    draw('path', {
      d: curveRuns(margin?.time_s ?? [], margin?.values ?? [], x, y)
        .map(pathThrough)
        .join(''),
      fill: 'none',
      stroke: 'var(--muted)',
      'stroke-width': 1.5,
      'stroke-dasharray': '5 4',
    }),
  );
}

/** Each plan named on its curve, where the flown curve is farthest from it. */
export function planLabels(
  planned: readonly Overlay[],
  curve: HeroCurve,
  span: Span,
  x: (t: number) => number,
  y: (v: number) => number,
  lost_px: number | null,
): Drawing[] {
  return planned.flatMap(({ name, margin }, k) => {
    const places = [0.55, 0.65, 0.45, 0.75, 0.35, 0.85].flatMap((share) => {
      const t = span.start_s + (share - 0.06 * k) * (span.end_s - span.start_s);
      const v = margin === null ? null : valueAt(margin.time_s, margin.values, t);
      if (v === null) return [];
      if (lost_px !== null && Math.abs(x(t) - lost_px) < 0.5 * letter * name.length + 8) return [];
      const flown = valueAt(curve.time_s, curve.values, t);
      return [{ t, v, clear: flown === null ? 60 : Math.min(60, Math.abs(y(flown) - y(v))) }];
    });
    const [best] = places.toSorted((a, b) => b.clear - a.clear);
    if (best === undefined) return [];
    return [
      draw(
        'text',
        {
          ...mark,
          'font-weight': 400,
          'font-size': 12,
          x: x(best.t),
          y: y(best.v) - 7,
          'text-anchor': 'middle',
          fill: 'var(--muted)',
        },
        name,
      ),
    ];
  });
}

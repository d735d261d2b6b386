import { type Drawing, draw } from './drawing.ts';
import type { PlotFrame, Span } from './plotFrame.ts';

/** The stretch that was chosen, shaded from top to bottom. */
export function framedBand(
  framed: Span | null,
  x: (t: number) => number,
  frame: PlotFrame,
  top: number,
  bottom: number,
): Drawing | null {
  if (framed === null) return null;
  const from = Math.max(x(framed.start_s), frame.left);
  const to = Math.min(x(framed.end_s), frame.right);
  if (to <= from) return null;
  return draw('rect', { x: from, y: top, width: to - from, height: bottom - top, fill: 'var(--framed)' });
}

/** A stretch of the flight, s from lift-off. */
export interface Span {
  readonly start_s: number;
  readonly end_s: number;
}

/** Charts share one left gutter for the values and one right edge, px, so that a moment is one line in all. */
export interface PlotFrame {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  /** True where the chart is drawn for a narrow screen: fewer ticks, taller. */
  readonly narrow: boolean;
}

/** @param width of the whole chart, px */
export function plotFrame(width: number): PlotFrame {
  const narrow = width < 560;
  return { width, left: narrow ? 46 : 62, right: width - (narrow ? 4 : 12), narrow };
}

/** About how many times are written under a chart of this width. */
export function timeTickCount(frame: PlotFrame): number {
  return Math.max(3, Math.round((frame.right - frame.left) / 95));
}

/** Time in s to px across the frame. */
export function timeScale(frame: PlotFrame, span: Span): (time_s: number) => number {
  const perSecond = (frame.right - frame.left) / (span.end_s - span.start_s);
  return (time_s) => frame.left + (time_s - span.start_s) * perSecond;
}

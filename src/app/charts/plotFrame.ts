/** Charts share one left gutter for the values and one right edge, px, so that a moment is one line in all. */
export interface PlotFrame {
  readonly left: number;
  readonly right: number;
  /** True where the chart is drawn for a narrow screen: fewer ticks, taller. */
  readonly narrow: boolean;
}

/** @param width of the whole chart, px */
export function plotFrame(width: number): PlotFrame {
  const narrow = width < 560;
  return { left: narrow ? 46 : 62, right: width - (narrow ? 4 : 12), narrow };
}

/** About how many times are written under a chart of this width. */
export function timeTickCount(frame: PlotFrame): number {
  return Math.max(3, Math.round((frame.right - frame.left) / 95));
}

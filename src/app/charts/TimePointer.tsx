import { useLayoutEffect, useRef } from 'preact/hooks';
import type { PlotFrame, Span } from '../../exchange/report/plotFrame.ts';
import { brushed, cursor_s, panned, showAscent, showSpan, zoom } from './timeFrame.ts';
import { followGestures } from './timeGestures.ts';

interface Props {
  readonly span: Span;
  readonly frame: PlotFrame;
  /** What is read at a time, for those who do not see the charts. */
  readonly describe: (time_s: number) => string;
}

/** The one time cursor over the leading chart: pointer, fingers or keys move it, and every chart follows. */
export function TimePointer({ span, frame, describe }: Props) {
  const area = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => (area.current === null ? undefined : followGestures(area.current)), []);
  const length = span.end_s - span.start_s;
  const width = frame.right - frame.left;
  const at = cursor_s.value;
  const shown = at !== null && at >= span.start_s && at <= span.end_s ? at : null;
  const px = (time_s: number) =>
    ((Math.min(Math.max(time_s, span.start_s), span.end_s) - span.start_s) / length) * width;

  /** Moves the cursor; past an edge the stretch goes along with it. */
  const moveTo = (time_s: number) => {
    if (time_s < span.start_s || time_s > span.end_s) {
      showSpan(panned(span, Math.sign(time_s - span.start_s) * 0.25));
    }
    cursor_s.value = time_s;
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const here = shown ?? Math.min(Math.max(0, span.start_s), span.end_s);
    const step = (event.shiftKey ? 0.1 : 0.01) * length;
    const moves: Record<string, () => void> = {
      ArrowRight: () => moveTo(here + step),
      ArrowUp: () => moveTo(here + step),
      ArrowLeft: () => moveTo(here - step),
      ArrowDown: () => moveTo(here - step),
      PageUp: () => moveTo(here + 0.1 * length),
      PageDown: () => moveTo(here - 0.1 * length),
      Home: () => moveTo(span.start_s),
      End: () => moveTo(span.end_s),
      '+': () => zoom(0.5),
      '=': () => zoom(0.5),
      '-': () => zoom(2),
      '0': showAscent,
      Escape: () => {
        cursor_s.value = null;
      },
    };
    const move = moves[event.key];
    if (move === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    move();
  };

  const drawn = brushed.value;
  return (
    <div
      class="time-pointer"
      ref={area}
      role="slider"
      tabIndex={0}
      aria-label="Time cursor of all charts"
      aria-valuemin={Math.round(span.start_s)}
      aria-valuemax={Math.round(span.end_s)}
      aria-valuenow={Math.round(shown ?? span.start_s)}
      aria-valuetext={
        shown === null ? 'not placed; arrow keys place it, plus and minus zoom' : describe(shown)
      }
      style={{ left: `${frame.left}px`, width: `${width}px` }}
      onKeyDown={onKeyDown}
    >
      {shown === null ? null : <div class="cursor-line" style={{ left: `${px(shown)}px` }} />}
      {drawn === null ? null : (
        <div
          class="drag-band"
          style={{ left: `${px(drawn.start_s)}px`, width: `${px(drawn.end_s) - px(drawn.start_s)}px` }}
        />
      )}
    </div>
  );
}

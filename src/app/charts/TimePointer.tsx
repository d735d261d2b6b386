import { useState } from 'preact/hooks';
import type { PlotFrame } from './plotFrame.ts';
import { cursor_s, type Span, showAscent, showSpan, zoom } from './timeFrame.ts';

interface Props {
  readonly span: Span;
  readonly frame: PlotFrame;
  /** What is read at a time, for those who do not see the charts. */
  readonly describe: (time_s: number) => string;
}

/** Shortest drag that is meant as one, px. */
const dragStart_px = 6;

/** The one time cursor: pointer, finger or arrow keys move it, and every chart follows. Dragging zooms. */
export function TimePointer({ span, frame, describe }: Props) {
  const [drag, setDrag] = useState<{ from: number; to: number } | null>(null);
  const length = span.end_s - span.start_s;
  const width = frame.right - frame.left;
  const at = cursor_s.value;
  const shown = at !== null && at >= span.start_s && at <= span.end_s ? at : null;
  const timeAt = (px: number) => span.start_s + (Math.min(Math.max(px, 0), width) / width) * length;
  const px = (event: PointerEvent & { currentTarget: HTMLElement }) =>
    event.clientX - event.currentTarget.getBoundingClientRect().left;
  const moveTo = (time_s: number) => {
    cursor_s.value = Math.min(Math.max(time_s, span.start_s), span.end_s);
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

  return (
    <div
      class="time-pointer"
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
      onPointerDown={(event) => {
        if (event.pointerType === 'mouse' && event.button === 0) {
          event.currentTarget.setPointerCapture(event.pointerId);
          setDrag({ from: px(event), to: px(event) });
        }
      }}
      onPointerMove={(event) => {
        moveTo(timeAt(px(event)));
        if (drag !== null) setDrag({ from: drag.from, to: px(event) });
      }}
      onPointerUp={() => {
        if (drag !== null && Math.abs(drag.to - drag.from) >= dragStart_px) {
          showSpan({
            start_s: timeAt(Math.min(drag.from, drag.to)),
            end_s: timeAt(Math.max(drag.from, drag.to)),
          });
        }
        setDrag(null);
      }}
      onPointerLeave={() => {
        if (drag === null) cursor_s.value = null;
      }}
      onDblClick={showAscent}
    >
      {shown === null ? null : (
        <div class="cursor-line" style={{ left: `${((shown - span.start_s) / length) * width}px` }} />
      )}
      {drag !== null && Math.abs(drag.to - drag.from) >= dragStart_px ? (
        <div
          class="drag-band"
          style={{ left: `${Math.min(drag.from, drag.to)}px`, width: `${Math.abs(drag.to - drag.from)}px` }}
        />
      ) : null}
    </div>
  );
}

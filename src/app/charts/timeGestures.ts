import { brushed, cursor_s, glideTo, panned, showAscent, showSpan, span, zoomed } from './timeFrame.ts';

/** Shortest drag that is meant as one, px. */
const dragStart_px = 6;
/** A notch of a wheel (100 px) zooms by a quarter. */
const wheelStrength = 0.0022;

/**
 * Lets a chart's plot area be worked with pointer, fingers and wheel, like every other chart. Its left and right
 * edges are those of the shown stretch. Dragging frames a stretch, with Shift held it moves along; two fingers zoom;
 * the wheel zooms with Ctrl held or once the chart was pressed, until the pointer leaves it, so that a page that is
 * scrolled past is not caught; a sideways wheel moves along; a double press shows the ascent again.
 * @returns what ends it
 */
export function followGestures(area: HTMLElement): () => void {
  const fingers = new Map<number, number>();
  let drag: { readonly kind: 'frame' | 'move'; readonly from: number } | null = null;
  let caught = false;

  const place = (event: MouseEvent) => event.clientX - area.getBoundingClientRect().left;
  const width = () => area.clientWidth || 1;
  const timeAt = (px: number) => {
    const { start_s, end_s } = span.peek();
    return start_s + (Math.min(Math.max(px, 0), width()) / width()) * (end_s - start_s);
  };

  /** Keeps the times that two fingers hold under them. */
  const pinch = (moved: number, to: number) => {
    const [other] = [...fingers].filter(([id]) => id !== moved).map(([, px]) => px);
    const from = fingers.get(moved);
    if (other === undefined || from === undefined) return;
    const before = Math.abs(from - other);
    const after = Math.abs(to - other);
    if (before < 8 || after < 8) return;
    glideTo(zoomed(span.peek(), before / after, timeAt(other)));
  };

  const onDown = (event: PointerEvent) => {
    if (event.pointerType === 'mouse' && event.button !== 0) return;
    caught = true;
    fingers.set(event.pointerId, place(event));
    if (event.pointerType !== 'touch') {
      area.setPointerCapture(event.pointerId);
      drag = { kind: event.shiftKey ? 'move' : 'frame', from: place(event) };
    }
    cursor_s.value = timeAt(place(event));
  };
  const onMove = (event: PointerEvent) => {
    const px = place(event);
    if (fingers.size === 2 && fingers.has(event.pointerId)) {
      pinch(event.pointerId, px);
      fingers.set(event.pointerId, px);
      return;
    }
    if (drag?.kind === 'move') {
      const before = fingers.get(event.pointerId) ?? px;
      glideTo(panned(span.peek(), (before - px) / width()));
    } else if (drag !== null) {
      const ends = [timeAt(drag.from), timeAt(px)];
      brushed.value =
        Math.abs(px - drag.from) < dragStart_px
          ? null
          : { start_s: Math.min(...ends), end_s: Math.max(...ends) };
    }
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, px);
    cursor_s.value = timeAt(px);
  };
  const onUp = (event: PointerEvent) => {
    fingers.delete(event.pointerId);
    const chosen = brushed.peek();
    drag = null;
    brushed.value = null;
    if (chosen !== null && event.type === 'pointerup') showSpan(chosen);
  };
  const onLeave = (event: PointerEvent) => {
    if (event.pointerType !== 'mouse' || drag !== null) return;
    caught = false;
    cursor_s.value = null;
  };
  const onWheel = (event: WheelEvent) => {
    const unit = event.deltaMode === 1 ? 16 : 1;
    const sideways = event.shiftKey ? event.deltaX || event.deltaY : event.deltaX;
    if (Math.abs(sideways) > Math.abs(event.deltaY) || (event.shiftKey && sideways !== 0)) {
      event.preventDefault();
      return glideTo(panned(span.peek(), (sideways * unit) / width()));
    }
    if (!(caught || event.ctrlKey || event.metaKey) || event.deltaY === 0) return;
    event.preventDefault();
    // A trackpad's pinch arrives as a wheel with Ctrl and small steps.
    const strength = event.ctrlKey && Math.abs(event.deltaY) < 50 ? 4 * wheelStrength : wheelStrength;
    glideTo(zoomed(span.peek(), Math.exp(event.deltaY * unit * strength), timeAt(place(event))));
  };

  const listeners: readonly [string, (event: never) => void, AddEventListenerOptions?][] = [
    ['pointerdown', onDown],
    ['pointermove', onMove],
    ['pointerup', onUp],
    ['pointercancel', onUp],
    ['pointerleave', onLeave],
    ['wheel', onWheel, { passive: false }],
    ['dblclick', showAscent],
  ];
  for (const [name, listen, how] of listeners) area.addEventListener(name, listen as EventListener, how);
  return () => {
    for (const [name, listen] of listeners) area.removeEventListener(name, listen as EventListener);
    // The chart goes before the finger leaves it: nothing is left of the drag.
    if (drag !== null) brushed.value = null;
  };
}

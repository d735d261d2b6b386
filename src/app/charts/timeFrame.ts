import { batch, computed, signal } from '@preact/signals';
import { ascentSpan, wholeSpan } from '../../exchange/report/flightSpan.ts';
import type { Span } from '../../exchange/report/plotFrame.ts';
import { route, setView } from '../route.ts';
import { current } from '../state.ts';

/** Where a gesture has led that is still going on; the address follows when it rests. */
const gliding = signal<Span | null>(null);

/** What all charts show: the stretch in the address, else the ascent. */
export const span = computed<Span>(() => {
  const open = current.value;
  if (open === null) return { start_s: 0, end_s: 1 };
  if (gliding.value !== null) return gliding.value;
  const whole = wholeSpan(open.analysis);
  const from = Number(route.value.view.from ?? Number.NaN);
  const to = Number(route.value.view.to ?? Number.NaN);
  if (!(to > from) || from >= whole.end_s || to <= whole.start_s) return ascentSpan(open.analysis);
  return { start_s: Math.max(from, whole.start_s), end_s: Math.min(to, whole.end_s) };
});

/** Time under the reader's finger, pointer or arrow keys, in all charts; null = none. */
export const cursor_s = signal<number | null>(null);

/** Stretch that is being drawn with the pointer, shaded in all charts; null = none. */
export const brushed = signal<Span | null>(null);

/** The finding that the reader chose, by its place in the list; null = none. */
export const chosenFinding = computed<number | null>(() => {
  const place = Number(route.value.view.finding ?? Number.NaN);
  const count = current.value?.analysis.review.findings.length ?? 0;
  return Number.isInteger(place) && place >= 0 && place < count ? place : null;
});

/** Stretch of the chosen finding, shaded in all charts. */
export const framed = computed<Span | null>(() => {
  const place = chosenFinding.value;
  return place === null ? null : (current.value?.analysis.review.findings[place] ?? null);
});

/** The stretch held inside the log and no shorter than a second; null without a flight. */
function held(wanted: Span): Span | null {
  const open = current.peek();
  if (open === null) return null;
  const whole = wholeSpan(open.analysis);
  const length = Math.min(Math.max(wanted.end_s - wanted.start_s, 1), whole.end_s - whole.start_s);
  const start_s = Math.min(Math.max(wanted.start_s, whole.start_s), whole.end_s - length);
  return { start_s, end_s: start_s + length };
}

function viewOf(shown: Span): Readonly<Record<string, string>> {
  return { from: shown.start_s.toFixed(2), to: shown.end_s.toFixed(2) };
}

/** Shows another stretch. */
export function showSpan(wanted: Span): void {
  const shown = held(wanted);
  if (shown === null) return;
  stopGliding();
  setView(viewOf(shown));
}

/** How long a gesture rests before the address follows, ms: browsers limit how often it may change. */
const rest_ms = 200;
let resting: ReturnType<typeof setTimeout> | undefined;

/** Shows another stretch while a gesture goes on. */
export function glideTo(wanted: Span): void {
  const shown = held(wanted);
  if (shown === null) return;
  gliding.value = shown;
  clearTimeout(resting);
  const { screen, view } = route.peek();
  resting = setTimeout(() => {
    batch(() => {
      // Another flight or screen may have come meanwhile.
      if (route.peek().screen === screen && route.peek().view.flight === view.flight) setView(viewOf(shown));
      gliding.value = null;
    });
  }, rest_ms);
}

function stopGliding(): void {
  clearTimeout(resting);
  gliding.value = null;
}

/** Back to the stretch that the charts open with. */
export function showAscent(): void {
  stopGliding();
  setView({ from: null, to: null });
}

/** The stretch made longer (factor above 1) or shorter about a time that stays where it is. */
export function zoomed({ start_s, end_s }: Span, factor: number, about_s: number): Span {
  return { start_s: about_s - (about_s - start_s) * factor, end_s: about_s + (end_s - about_s) * factor };
}

/** The stretch moved by a share of its length. */
export function panned({ start_s, end_s }: Span, share: number): Span {
  const by = share * (end_s - start_s);
  return { start_s: start_s + by, end_s: end_s + by };
}

/** Makes the stretch longer (factor above 1) or shorter about the cursor, else about its middle. */
export function zoom(factor: number): void {
  const { start_s, end_s } = span.peek();
  const cursor = cursor_s.peek();
  const about = cursor !== null && cursor >= start_s && cursor <= end_s ? cursor : (start_s + end_s) / 2;
  showSpan(zoomed({ start_s, end_s }, factor, about));
}

/** Chooses a finding and shows its stretch with a little on both sides; null chooses none. */
export function chooseFinding(place: number | null): void {
  const open = current.peek();
  const finding = place === null ? undefined : open?.analysis.review.findings[place];
  if (finding === undefined) {
    setView({ finding: null });
    return;
  }
  const margin = Math.max(1, 0.15 * (finding.end_s - finding.start_s));
  const shown = held({ start_s: finding.start_s - margin, end_s: finding.end_s + margin });
  if (shown === null) return;
  stopGliding();
  setView({ finding: String(place), ...viewOf(shown) });
}

import { computed, signal } from '@preact/signals';
import type { Analysis } from '../../review/types.ts';
import { route, setView } from '../route.ts';
import { current } from '../state.ts';

/** A stretch of the flight, s from lift-off. */
export interface Span {
  readonly start_s: number;
  readonly end_s: number;
}

/** The whole log. */
export function wholeSpan({ review, strips }: Analysis): Span {
  const rows = strips.time_s;
  const first = rows[0] ?? review.source.start_s;
  const last = rows[rows.length - 1] ?? review.source.end_s;
  return { start_s: first, end_s: last };
}

/** The ascent with a little on both sides; the whole log where the ascent is most of it. */
export function ascentSpan(analysis: Analysis): Span {
  const whole = wholeSpan(analysis);
  const { start_s, end_s } = analysis.review.ledger;
  const length = end_s - start_s;
  const known = Number.isFinite(length) && length > 0;
  if (!known || whole.end_s - whole.start_s < 1.35 * length) return whole;
  return {
    start_s: Math.max(whole.start_s, start_s - 0.02 * length),
    end_s: Math.min(whole.end_s, end_s + 0.1 * length),
  };
}

/** What all charts show: the stretch in the address, else the ascent. */
export const span = computed<Span>(() => {
  const open = current.value;
  if (open === null) return { start_s: 0, end_s: 1 };
  const whole = wholeSpan(open.analysis);
  const from = Number(route.value.view.from ?? Number.NaN);
  const to = Number(route.value.view.to ?? Number.NaN);
  if (!(to > from) || from >= whole.end_s || to <= whole.start_s) return ascentSpan(open.analysis);
  return { start_s: Math.max(from, whole.start_s), end_s: Math.min(to, whole.end_s) };
});

/** Time under the reader's finger, pointer or arrow keys, in all charts; null = none. */
export const cursor_s = signal<number | null>(null);

/** Shows another stretch, held inside the log and no shorter than a second. */
export function showSpan(wanted: Span): void {
  const open = current.peek();
  if (open === null) return;
  const whole = wholeSpan(open.analysis);
  const length = Math.min(Math.max(wanted.end_s - wanted.start_s, 1), whole.end_s - whole.start_s);
  const start = Math.min(Math.max(wanted.start_s, whole.start_s), whole.end_s - length);
  setView({ from: start.toFixed(1), to: (start + length).toFixed(1) });
}

/** Back to the stretch that the charts open with. */
export function showAscent(): void {
  setView({ from: null, to: null });
}

/** Makes the stretch longer (factor above 1) or shorter about the cursor, else about its middle. */
export function zoom(factor: number): void {
  const { start_s, end_s } = span.peek();
  const cursor = cursor_s.peek();
  const about = cursor !== null && cursor >= start_s && cursor <= end_s ? cursor : (start_s + end_s) / 2;
  showSpan({ start_s: about - (about - start_s) * factor, end_s: about + (end_s - about) * factor });
}

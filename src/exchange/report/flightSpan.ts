import type { Analysis } from '../../review/types.ts';
import type { Span } from './plotFrame.ts';

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

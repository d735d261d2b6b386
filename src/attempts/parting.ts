import { valueAt } from '../review/sampleAt.ts';
import { decimal } from '../review/wording.ts';
import type { Attempt, Parting } from './types.ts';

/** Points of the common axis on which two attempts are held against each other. */
const POINTS = 200;
/** A difference is told from this size, m/s, however narrow the intervals. */
const LEAST_M_S = 2;
/** It must last over this share of the axis. */
const LASTING = 0.03;
/** The stretch ends where the difference has this share of its greatest. */
const MOST_OF_IT = 0.9;

/**
 * Where an attempt and the reference part: the first stretch of delta-v spent in which their projected totals come
 * to differ by more than their 95 % intervals allow, until the difference has stopped growing. Null where they
 * never do, or where one of them has no projected total.
 */
export function partingOf(attempt: Attempt, reference: Attempt): Parting | null {
  const a = attempt.curve;
  const b = reference.curve;
  const end = Math.min(a.spent_m_s.at(-1) ?? 0, b.spent_m_s.at(-1) ?? 0);
  const start = Math.max(a.spent_m_s[0] ?? 0, b.spent_m_s[0] ?? 0);
  if (!(end > start)) return null;
  const half = Math.hypot(halfOf(attempt), halfOf(reference));
  const least = Math.max(LEAST_M_S, half);
  const spent = Array.from({ length: POINTS }, (_, k) => start + ((end - start) * k) / (POINTS - 1));
  const differences = spent.map((s) => {
    const [x, y] = [valueAt(a.spent_m_s, a.total_m_s, s), valueAt(b.spent_m_s, b.total_m_s, s)];
    return x === null || y === null ? null : x - y;
  });
  // What differs from the first on (another payload) is no parting of ways.
  const first = differences.find((d) => d !== null) ?? 0;
  const lasting = Math.max(1, Math.round(LASTING * POINTS));
  const far = (k: number): boolean => Math.abs((differences[k] ?? first) - first) > least;
  const from = spent.findIndex((_, k) => {
    for (let j = k; j < k + lasting; j++) if (j >= POINTS || !far(j)) return false;
    return true;
  });
  if (from === -1) return null;
  const sign = Math.sign((differences[from] ?? 0) - first);
  // Greatest before the difference turns back to where it was.
  let peak = from;
  for (let k = from; k < POINTS && far(k); k++) {
    const size = (j: number) => sign * ((differences[j] ?? first) - first);
    if (size(k) < 0) break;
    if (size(k) > size(peak)) peak = k;
  }
  const whole = (differences[peak] ?? first) - first;
  let to = from;
  while (to < peak && Math.abs((differences[to] ?? first) - first) < MOST_OF_IT * Math.abs(whole)) to++;
  const cost = (differences[to] ?? first) - first;
  const fromSpent = spent[from]!;
  const event = attempt.events.filter((e) => e.spent_m_s <= fromSpent + 1e-6).at(-1)?.name ?? null;
  const times = [from, to].map((k) => valueAt(a.spent_m_s, a.time_s, spent[k]!) ?? 0);
  const dearer = cost > 0 ? 'dearer' : 'cheaper';
  return {
    fromSpent_m_s: fromSpent,
    toSpent_m_s: spent[to]!,
    from_s: times[0]!,
    to_s: times[1]!,
    after: event,
    cost_m_s: { value: cost, low: cost - half, high: cost + half, basis: 'derived' },
    text: `From ${decimal(times[0]!, 0)} s to ${decimal(times[1]!, 0)} s it became ${decimal(Math.abs(cost), 0)} m/s ${dearer} than ${reference.name}${event === null ? '' : `, after ${event}`}.`,
  };
}

/** Half of the projected total's 95 % interval, m/s. */
function halfOf(attempt: Attempt): number {
  const { low, high } = attempt.scores.projectedTotal_m_s;
  return low === null || high === null ? 0 : (high - low) / 2;
}

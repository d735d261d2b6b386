import type { Basis, Figure } from './types.ts';

/** Two-sided 95 % of a normal distribution. */
export const NORMAL_95 = 1.959964;

/** A figure from a value and its one-sigma error. */
export function figure(value: number, sigma: number, basis: Basis): Figure {
  if (!Number.isFinite(value)) return unavailable('it could not be computed from this log');
  const half = NORMAL_95 * (Number.isFinite(sigma) ? sigma : 0);
  return { value, low: value - half, high: value + half, basis };
}

/** One sigma from a figure's 95 % interval; 0 where it has none. */
export function sigmaOf(f: Figure): number {
  return f.low === null || f.high === null ? 0 : (f.high - f.low) / (2 * NORMAL_95);
}

/** A figure with its interval given outright. */
export function figureBetween(value: number, low: number, high: number, basis: Basis): Figure {
  if (!Number.isFinite(value)) return unavailable('it could not be computed from this log');
  return { value, low: Math.min(low, value), high: Math.max(high, value), basis };
}

/** A figure that cannot be had, with the reason in a clause. */
export function unavailable(reason: string): Figure {
  return { value: null, low: null, high: null, basis: 'unavailable', reason };
}

/** The same figure with what an assumption could move it to. */
export function withAssumption(f: Figure, what: string, other: number): Figure {
  if (f.value === null || !Number.isFinite(other)) return f;
  const before = f.assumptions?.find((a) => a.what === what);
  const low = Math.min(before?.low ?? f.value, other);
  const high = Math.max(before?.high ?? f.value, other);
  const rest = (f.assumptions ?? []).filter((a) => a.what !== what);
  return { ...f, assumptions: [...rest, { what, low, high }] };
}

/** The same figure with its interval widened to reach another reading. */
export function widened(f: Figure, other: number): Figure {
  if (f.value === null || !Number.isFinite(other)) return f;
  return { ...f, low: Math.min(f.low!, other), high: Math.max(f.high!, other) };
}

/**
 * a + b, or a − b: the intervals' reaches in quadrature on each side, and beside them what an assumption could move
 * either to. Unavailable, with the reason, where either is.
 */
export function combined(a: Figure, b: Figure, sign: 1 | -1): Figure {
  if (a.value === null || b.value === null)
    return unavailable((a.value === null ? a.reason : b.reason) ?? 'a part of it is not known');
  const value = a.value + sign * b.value;
  const [down, up] = [b.value - b.low!, b.high! - b.value];
  let f = figureBetween(
    value,
    value - Math.hypot(a.value - a.low!, sign === 1 ? down : up),
    value + Math.hypot(a.high! - a.value, sign === 1 ? up : down),
    'derived',
  );
  for (const { what, low, high } of a.assumptions ?? [])
    for (const end of [low, high]) f = withAssumption(f, what, value + end - a.value);
  for (const { what, low, high } of b.assumptions ?? [])
    for (const end of [low, high]) f = withAssumption(f, what, value + sign * (end - b.value));
  return f;
}

/** A thing that is edited, with the way back and forth. */
export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** What is being changed bit by bit: further changes of it are one step with the first. */
  readonly under: string | null;
}

/** Steps that can be taken back. */
const mostSteps = 200;

export function begin<T>(now: T): History<T> {
  return { past: [], now, future: [], under: null };
}

/** @param under names a change that goes on (the letters of one cell); null for one that is whole */
export function change<T>(history: History<T>, now: T, under: string | null): History<T> {
  if (now === history.now) return history;
  const goesOn = under !== null && under === history.under;
  const past = goesOn ? history.past : [...history.past, history.now].slice(-mostSteps);
  return { past, now, future: [], under };
}

/** Ends a change that goes on. */
export function settle<T>(history: History<T>): History<T> {
  return history.under === null ? history : { ...history, under: null };
}

export function undo<T>({ past, now, future }: History<T>): History<T> | null {
  const before = past.at(-1);
  return before === undefined
    ? null
    : { past: past.slice(0, -1), now: before, future: [now, ...future], under: null };
}

export function redo<T>({ past, now, future }: History<T>): History<T> | null {
  const [after, ...rest] = future;
  return after === undefined ? null : { past: [...past, now], now: after, future: rest, under: null };
}

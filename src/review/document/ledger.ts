import type { Figure } from './figure.ts';

export type FrameName = 'ground' | 'inertial';

/** Entries of METHODS §2 in m/s. In the inertial frame `frame` is unavailable (there is none). */
export interface LedgerEntries {
  readonly ideal: Figure;
  readonly backPressure: Figure;
  readonly steering: Figure;
  readonly drag: Figure;
  readonly gravity: Figure;
  readonly frame: Figure;
  readonly holdDown: Figure;
  readonly speedGained: Figure;
  readonly unexplained: Figure;
}

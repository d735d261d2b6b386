import type { Figure, LedgerEntries } from '../../review/types.ts';
import { type Cause, causes } from './causes.ts';

export interface LedgerPart {
  readonly cause: Cause;
  readonly figure: Figure;
  readonly value_m_s: number;
  /** Share of everything that is drawn, 0 to 1. */
  readonly share: number;
}

/**
 * What the bar shows: each entry that took delta-v as its share of all that were taken; entries below zero gave
 * delta-v back, have no length and are listed apart. Entries without a value, and zeros, are left out.
 */
export function ledgerParts(entries: LedgerEntries): {
  readonly taken: readonly LedgerPart[];
  readonly given: readonly LedgerPart[];
} {
  const known = causes.flatMap((cause) => {
    const figure = entries[cause.key];
    return figure.value === null || Math.abs(figure.value) < 0.05
      ? []
      : [{ cause, figure, value_m_s: figure.value }];
  });
  const total = known.reduce((sum, p) => sum + Math.max(0, p.value_m_s), 0);
  const parts = known.map((p) => ({ ...p, share: total > 0 ? Math.max(0, p.value_m_s) / total : 0 }));
  return { taken: parts.filter((p) => p.value_m_s > 0), given: parts.filter((p) => p.value_m_s < 0) };
}

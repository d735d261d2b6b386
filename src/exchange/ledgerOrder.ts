import type { LedgerEntries } from '../review/types.ts';

/** The ledger's entries in the order they are shown, with the names that people read. */
export const ledgerOrder: readonly (readonly [keyof LedgerEntries, string])[] = [
  ['ideal', 'ideal'],
  ['speedGained', 'speed gained'],
  ['gravity', 'gravity'],
  ['steering', 'steering'],
  ['drag', 'drag'],
  ['backPressure', 'back pressure'],
  ['holdDown', 'hold-down'],
  ['frame', 'frame'],
  ['unexplained', 'unexplained'],
];

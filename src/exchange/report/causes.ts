import type { LedgerEntries } from '../../review/types.ts';
import { ledgerOrder } from '../ledgerOrder.ts';

type CauseKey = Exclude<keyof LedgerEntries, 'ideal'>;

/** A place where delta-v goes, with the one name and colour that it has everywhere. */
export interface Cause {
  readonly key: CauseKey;
  readonly label: string;
  /** Class that carries the colour (theme.css) and, for what is unexplained, the hatch. */
  readonly swatch: string;
}

const swatches: Readonly<Record<CauseKey, string>> = {
  speedGained: 'cause-speed',
  gravity: 'cause-gravity',
  steering: 'cause-steering',
  drag: 'cause-drag',
  backPressure: 'cause-pressure',
  holdDown: 'cause-hold',
  frame: 'cause-frame',
  unexplained: 'cause-unexplained',
};

/** In the order of the ledger. */
export const causes: readonly Cause[] = ledgerOrder.flatMap(([key, label]) =>
  key === 'ideal' ? [] : [{ key, label, swatch: swatches[key] }],
);

import { LossbookError } from '../errors.ts';
import { faultsOf } from './parseCard.ts';
import { readMission } from './readCard.ts';

/**
 * Every fault of a card's text, field by field; where the fields are right one by one, the first contradiction
 * between them. Empty for a card that `readMission` takes.
 */
export function cardFaults(name: string, text: string): readonly LossbookError[] {
  const single = faultsOf(name, text);
  // One value can break several rules; the first says enough.
  const first = single.filter((e, i) => single.findIndex((other) => other.field === e.field) === i);
  if (first.length > 0) return first;
  try {
    readMission({ card: { name, text } });
    return [];
  } catch (error) {
    if (!(error instanceof LossbookError)) throw error;
    return [error];
  }
}

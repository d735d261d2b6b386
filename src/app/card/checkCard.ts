import { sentence } from '../../exchange/sentence.ts';
import { cardFaults } from '../../mission/cardFaults.ts';
import { describeMission } from '../../mission/describeCard.ts';
import { readMission } from '../../mission/readCard.ts';
import type { TextFile } from '../book/types.ts';
import { failureOf } from '../failure.ts';
import type { CardCheck } from '../protocol.ts';

/** What the engine's reader makes of a card's text: every fault with its field, or what it says and leaves out. */
export function checkCard(card: TextFile): CardCheck {
  const faults = cardFaults(card.name, card.text);
  if (faults.length > 0) {
    return {
      faults: faults.map((error) => {
        const { what, next, where } = failureOf(error);
        const row = where.row ?? null;
        return {
          field: error.field ?? '',
          text: `${sentence(what)} ${sentence(next)}`,
          row,
        };
      }),
      understood: [],
      missing: [],
    };
  }
  return { faults: [], ...describeMission(readMission({ card })) };
}

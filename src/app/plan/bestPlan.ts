import { LossbookError } from '../../errors.ts';
import { readMission } from '../../mission/readCard.ts';
import { planOfAscent } from '../../plan/planOfAscent.ts';
import { writePlan } from '../../plan/writePlan.ts';
import { bestAscent } from '../../refly/bestAscent.ts';
import { formatFigure } from '../../units/figures.ts';
import type { TextFile } from '../book/types.ts';
import type { BestPlan } from '../protocol.ts';

/**
 * Searches the best ascent of a card's rocket, target and limits and writes it as a plan.
 * @param say told how far the search has come
 * @throws LossbookError `ascent-not-found` where none is found; what reading a card can throw
 */
export function bestPlan(
  { card, name }: { readonly card: TextFile; readonly name: string },
  say: (text: string, share: number) => void,
): BestPlan {
  const mission = readMission({ card });
  say('searching the best ascent', 0);
  const found = bestAscent(mission, {
    onProgress: ({ done, margin_m_s }) =>
      say(
        margin_m_s === null
          ? 'searching the best ascent'
          : `searching the best ascent, ${formatFigure(margin_m_s, { decimals: 0 })} m/s to spare so far`,
        done,
      ),
  });
  if (found.kind !== 'found') {
    const reason = found.kind === 'stopped' ? 'the search was stopped' : found.reason;
    throw new LossbookError('ascent-not-found', { reason }, { file: card.name });
  }
  const file = `${name.replace(/\.[^.]*$/u, '')}.best.plan.csv`;
  return {
    plan: { name: file, text: writePlan(planOfAscent(found.plan, file)) },
    margin_m_s: found.margin_m_s,
    reachesTarget: found.reachesTarget,
  };
}

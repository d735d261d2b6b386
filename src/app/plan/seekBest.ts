import { formatFigure } from '../../units/figures.ts';
import { ask } from '../analyst.ts';
import type { BestPlan } from '../protocol.ts';
import { current, reviewAgain, work } from '../state.ts';
import { inUnits } from '../units.ts';

/** Searches the best ascent for the card of the flight that is shown, and makes it the flight's plan. */
export async function seekBest(): Promise<void> {
  const shown = current.peek();
  const card = shown?.files.card ?? null;
  if (shown === null || card === null) return;
  await work(shown.source.title, async (say, stands) => {
    const best = await ask('best', { card, name: shown.files.log.name }, say);
    if (stands()) await take(best);
  });
}

async function take({ plan, margin_m_s, reachesTarget }: BestPlan): Promise<void> {
  const size = inUnits(`${formatFigure(Math.abs(margin_m_s), { decimals: 0 })} m/s`);
  // What it leaves is said of the plan, whose rows are flown anew: a figure of its own here would differ in its last digit.
  const told = reachesTarget
    ? 'The best ascent found is now the flight’s plan.'
    : `No ascent of this rocket was found that arrives: the best one misses ${size}. It is now the flight’s plan.`;
  await reviewAgain({ plan }, told);
}

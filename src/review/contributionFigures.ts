import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import type { Contributions } from '../refly/contributions.ts';
import { worth } from './againstPlan.ts';
import { figure } from './figure.ts';
import type { Contribution } from './types.ts';

const words: Readonly<Record<Contribution['group'], string>> = {
  pitch: 'pitch up to the last stage',
  throttle: 'throttle up to the last stage',
  timing: 'staging and coast times',
  vehicle: 'mass and thrust of the vehicle',
  'last-stage-pitch': 'steering of the last stage',
  'last-stage-throttle': 'throttle of the last stage',
  cutoff: 'burning past the best cutoff',
  plan: 'the plan’s own last stage, with this rocket',
  model: 'the log less its re-flown flight',
};

/** Contributions as figures, dearest first; the model's own part is the error of the others and comes last. */
export function contributionFigures(
  flight: Flight,
  span: AscentSpan,
  found: Contributions | null,
): Contribution[] {
  if (found === null) return [];
  const model = found.parts.find((p) => p.group === 'model')?.deltaV_m_s ?? 0;
  const rank = (p: { readonly group: string; readonly deltaV_m_s: number }): number =>
    p.group === 'model' ? Number.NEGATIVE_INFINITY : p.deltaV_m_s;
  return [...found.parts]
    .sort((a, b) => rank(b) - rank(a))
    .map(({ group, deltaV_m_s }) => ({
      group,
      text: words[group],
      deltaV_m_s: figure(deltaV_m_s, group === 'model' ? 0 : Math.abs(model) / 2, 'derived'),
      propellant_kg: worth(flight, span, deltaV_m_s),
    }));
}

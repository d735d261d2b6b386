import { median } from '../log/statistics.ts';
import { broughtOff } from './reached.ts';
import type { Attempt, BestPhase } from './types.ts';

/**
 * The attempt that was cheapest in each phase; phases in their order. An ascent that broke off is not ranked in its
 * last phase: what it did not fly cost it nothing.
 */
export function bestPhases(attempts: readonly Attempt[]): BestPhase[] {
  const byLabel = new Map<string, { name: string; cost_m_s: number }[]>();
  for (const attempt of attempts)
    for (const { label, cost_m_s } of broughtOff(attempt) ? attempt.phases : attempt.phases.slice(0, -1)) {
      const list = byLabel.get(label) ?? [];
      list.push({ name: attempt.name, cost_m_s });
      byLabel.set(label, list);
    }
  return [...byLabel].map(([label, list]) => {
    const best = list.reduce((a, b) => (b.cost_m_s < a.cost_m_s ? b : a));
    const others = list.filter((entry) => entry !== best).map((entry) => entry.cost_m_s);
    return {
      label,
      name: best.name,
      cost_m_s: best.cost_m_s,
      saved_m_s: others.length === 0 ? null : median(others) - best.cost_m_s,
    };
  });
}

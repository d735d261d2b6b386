import { decimal } from '../review/wording.ts';
import { holm } from './holm.ts';
import { rankCorrelation } from './rankCorrelation.ts';
import type { Attempt, HabitName, HabitRelation } from './types.ts';

export const habitNames: readonly HabitName[] = [
  'pitchOverTime_s',
  'pitchOverAngle_deg',
  'thrustToWeightAtMaxQ',
  'angleOfAttackInAir_deg',
  'cutoffError_m_s',
];

/** Habits in words. */
export const habitWords: Readonly<Record<HabitName, string>> = {
  pitchOverTime_s: 'pitch-over time',
  pitchOverAngle_deg: 'pitch-over angle',
  thrustToWeightAtMaxQ: 'thrust-to-weight at max q',
  angleOfAttackInAir_deg: 'angle of attack in dense air',
  cutoffError_m_s: 'cutoff error',
};

/** Below this a relation is said to be beyond chance. */
const CHANCE = 0.05;

/** Which habit goes with the margin, over attempts with the same rocket and target; strongest first. */
export function habitRelations(attempts: readonly Attempt[]): HabitRelation[] {
  const found = habitNames.flatMap((habit) => {
    const pairs = attempts.flatMap((a) => {
      const [x, y] = [a.habits[habit], a.scores.margin_m_s.value];
      // Too long a burn and too short a one both cost: it is the error's size that can go with the margin.
      const size = x !== null && habit === 'cutoffError_m_s' ? Math.abs(x) : x;
      return size === null || y === null ? [] : [[size, y] as const];
    });
    const relation = rankCorrelation(
      pairs.map(([x]) => x),
      pairs.map(([, y]) => y),
    );
    return relation === null ? [] : [{ habit, ...relation }];
  });
  const corrected = holm(found.map((r) => r.p));
  return found
    .map(({ habit, rho, p, points }, k): HabitRelation => {
      const correctedP = corrected[k] ?? 1;
      return { habit, rho, p, correctedP, attempts: points, text: sentence(habit, rho, correctedP, points) };
    })
    .sort((a, b) => Math.abs(b.rho) - Math.abs(a.rho));
}

function sentence(habit: HabitName, rho: number, p: number, points: number): string {
  const name = habit === 'cutoffError_m_s' ? `${habitWords[habit]} (either way)` : habitWords[habit];
  const tail = `(rank correlation ${rho < 0 ? '' : '+'}${decimal(rho, 2)}, ${points} attempts, p ${pText(p)} after correction for the habits looked at)`;
  if (p > CHANCE) return `A relation of ${name} and margin is not beyond chance ${tail}.`;
  return `${rho > 0 ? 'Greater' : 'Smaller'} ${name} goes with more margin ${tail}; that is no proof that it is the cause.`;
}

export function pText(p: number): string {
  return p < 0.001 ? 'below 0.001' : decimal(p, p < 0.1 ? 3 : 2);
}

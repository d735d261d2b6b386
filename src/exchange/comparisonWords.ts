import type { Comparison, ComparisonGroup, HabitName, ScoreName } from '../attempts/types.ts';
import { numberText } from './figureText.ts';

/** The comparison in one sentence. */
export function comparisonHeading({ rows, groups, by }: Comparison): string {
  const reached = groups.reduce((sum, g) => sum + g.reached, 0);
  const count = rows.length === 1 ? 'One attempt' : `${numberText(rows.length, 0)} attempts`;
  return groups.length > 1
    ? `${count}, ${groups.length} ${by}s: ${numberText(reached, 0)} on target.`
    : `${count}: ${numberText(reached, 0)} on target.`;
}

/** How many of a group made it, and its margins, in the unit given (how many of it are one m/s). */
export function groupRemark(
  { attempts, reached, margin }: ComparisonGroup,
  { scale, unit }: { readonly scale: number; readonly unit: string } = { scale: 1, unit: 'm/s' },
): string {
  const at = (v: number | null) => numberText(v === null ? null : v * scale, 0);
  const range =
    margin.median === null
      ? 'no margin known'
      : `margin ${at(margin.least)} to ${at(margin.most)} ${unit}, median ${at(margin.median)}`;
  return `${numberText(reached, 0)} of ${numberText(attempts, 0)} on target, ${range}`;
}

/** Scores that can be columns, in their order, with their heads. */
export const scoreHeads: Readonly<Record<ScoreName, { readonly head: string; readonly unit: 'm/s' | 'kg' }>> =
  {
    margin_m_s: { head: 'margin', unit: 'm/s' },
    projectedTotal_m_s: { head: 'projected total', unit: 'm/s' },
    spent_m_s: { head: 'spent', unit: 'm/s' },
    toGo_m_s: { head: 'to go', unit: 'm/s' },
    remaining_m_s: { head: 'remaining', unit: 'm/s' },
    gravity_m_s: { head: 'gravity', unit: 'm/s' },
    drag_m_s: { head: 'drag', unit: 'm/s' },
    steering_m_s: { head: 'steering', unit: 'm/s' },
    backPressure_m_s: { head: 'back pressure', unit: 'm/s' },
    propellantLeft_kg: { head: 'propellant left', unit: 'kg' },
  };

/** Units and decimals of the habits. */
export const habitUnits: Readonly<Record<HabitName, readonly [unit: string, decimals: number]>> = {
  pitchOverTime_s: ['s', 1],
  pitchOverAngle_deg: ['°', 1],
  thrustToWeightAtMaxQ: ['', 2],
  angleOfAttackInAir_deg: ['°', 2],
  cutoffError_m_s: ['m/s', 1],
};

/** How a stitched flight is made, in one sentence for page, report and terminal. */
export const stitchedNote =
  'Each phase is flown with its own flight’s pitch and throttle against the delta-v spent in it, coasts with their own flight’s length, by the card’s vehicle as the log shows it; the gaps are the state taken over less that in which its own flight began the phase.';

/** How much a comparison holds, in one sentence: the data by count, of which a program's heap takes about twice. */
export function heldText({ rows, bytes }: Comparison): string {
  const megabytes = bytes / 1e6;
  const held =
    megabytes < 0.1
      ? `${numberText(bytes / 1e3, 0)} kB`
      : `${numberText(megabytes, megabytes < 10 ? 1 : 0)} MB`;
  return `${numberText(rows.length, 0)} ${rows.length === 1 ? 'attempt is' : 'attempts are'} held as ${held} of figures and texts; in memory they take about twice that.`;
}

import type { WhyNot } from '../review/types.ts';
import { numberText } from './figureText.ts';
import { wrapText } from './wrapText.ts';

/** Why the flight is not in orbit: the moment, what had been spent by then, and what would have brought it there. */
export function whyNotText(why: WhyNot, width: number): string[] {
  const { spentThen_m_s: spent, wastedThen_m_s: wasted, outOfReach_s } = why;
  const then =
    spent === null || outOfReach_s === null || outOfReach_s === 0
      ? []
      : wrapText(
          `By then ${numberText(spent, 0)} m/s were spent${wasted === null ? '' : `, ${numberText(wasted, 0)} m/s more than the plan for the same progress`}.`,
          width,
        );
  const rest = why.changes.slice(1).flatMap((change) => {
    const km = (metres: number) => numberText(metres / 1000, 0);
    const orbit = `${km(change.apoapsisAltitude_m)} × ${km(change.periapsisAltitude_m)} km`;
    return wrapText(`· or ${change.text}: ${orbit}`, width, '  ');
  });
  return [...wrapText(why.text, width), ...then, ...rest];
}

import type { AgainstPlan } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';

/** What a flight came to against its plan, in a sentence. */
export function planLine({ avoidable, planned }: AgainstPlan): string {
  const by = avoidable.deltaV_m_s.value;
  if (by === null) {
    return planned.margin === null
      ? 'Flown and planned; what could have been avoided is not known.'
      : `The plan arrives with ${formatFigure(planned.margin, { decimals: 0 })} m/s; what the flight could have avoided is not known.`;
  }
  const size = `${formatFigure(Math.abs(by), { decimals: 0 })} m/s`;
  if (Math.abs(by) < 0.5) return 'As thrifty as the plan.';
  return by > 0 ? `Dearer than the plan by ${size}.` : `Thriftier than the plan by ${size}.`;
}

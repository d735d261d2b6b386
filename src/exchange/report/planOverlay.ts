import type { Analysis } from '../../review/types.ts';
import { channelsOf, type Overlay } from './overlay.ts';

/** The plan as the same rocket flies it, to be drawn behind the flown curves; empty without a plan. */
export function planOverlay({ review, planStrips }: Analysis): readonly Overlay[] {
  if (planStrips === undefined) return [];
  const curves = review.againstPlan?.plannedCurves;
  return [
    {
      name: 'as planned',
      time_s: planStrips.time_s,
      channels: channelsOf(planStrips),
      margin: curves === undefined ? null : { time_s: curves.time_s, values: curves.margin },
    },
  ];
}

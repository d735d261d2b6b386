import { unavailable } from '../figure.ts';
import type { Finding } from '../types.ts';
import { decimal } from '../wording.ts';
import type { OrbitWork } from './types.ts';

/** Delta-v lost by place or direction from which it is told, m/s, and as a share of the burn. */
const TOLD_M_S = 2;
const TOLD_SHARE = 0.05;

/** Burns in orbit that would have been cheaper elsewhere; a deorbit burn is told with the way down. */
export function orbitFindings(work: OrbitWork): Finding[] {
  return work.burns.flatMap((burn): Finding[] => {
    const [lost, spent] = [burn.placeLoss_m_s.value, burn.deltaV_m_s.value];
    if (burn.kind === 'deorbit' || lost === null || spent === null) return [];
    if (lost < TOLD_M_S || lost < TOLD_SHARE * spent) return [];
    return [
      {
        code: 'orbit-burn-place',
        start_s: burn.start_s,
        end_s: burn.end_s,
        cost_m_s: burn.placeLoss_m_s,
        propellant_kg: unavailable('not reckoned'),
        text: `A burn in orbit was made in the wrong place or direction, for ${decimal(lost, 1)} m/s.`,
        evidence: burn.text,
        advice:
          burn.bestAt === null
            ? 'Hold the thrust along the path, or across it for a change of plane only.'
            : `Burn at ${burn.bestAt}, the middle of the burn there, along the path.`,
      },
    ];
  });
}

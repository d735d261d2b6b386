import { decimal } from '../wording.ts';
import type { Candidate, Finder, Occasion } from './types.ts';

/** Dynamic pressure above which the air counts as dense, Pa. */
const DENSE_PA = 1000;
const DEG = 180 / Math.PI;

/** Angle of attack in dense air: what steering took there, from the ledger. */
export const airFindings: Finder = (o) => {
  const { flight, ground, span } = o;
  const { steering } = ground;
  const alpha = o.strips.channels.angleOfAttack_deg?.values;
  if (steering === null || alpha === undefined || flight.mission.world.atmosphere === null) return [];
  let cost = 0;
  let start = -1;
  let end = -1;
  let most = 0;
  let most_s = 0;
  for (let i = Math.max(ground.start, flight.liftOffIndex) + 1; i <= span.end; i++) {
    if (flight.dynamicPressure[i]! < DENSE_PA) continue;
    const step = steering[i]! - steering[i - 1]!;
    cost += step;
    const a = Math.abs(alpha[i]!);
    if (a > 3 && Number.isFinite(a)) {
      if (start < 0) start = i;
      end = i;
    }
    if (a > most) {
      most = a;
      most_s = flight.time[i]!;
    }
  }
  if (start < 0) return [];
  return [candidate(o, cost, { start, end, most, most_s })];
};

function candidate(
  { flight }: Occasion,
  cost: number,
  { start, end, most, most_s }: { start: number; end: number; most: number; most_s: number },
): Candidate {
  const sigma = flight.noise.pitch_rad * DEG;
  return {
    code: 'angle-of-attack-in-air',
    start_s: flight.time[start]!,
    end_s: flight.time[end]!,
    cost_m_s: cost,
    sigma_m_s: 0.02 * cost + 0.1 * sigma,
    claim: 'pitch',
    text: `Flown up to ${decimal(most, 0)}° off its path in dense air.`,
    evidence: `The angle between thrust and path was greatest at ${decimal(most_s, 0)} s; steering took ${decimal(cost, 0)} m/s while the dynamic pressure was over ${DENSE_PA / 1000} kPa, and loads grow with the angle.`,
    advice:
      'Make the pitch-over small and early, then keep the nose on the path until the air is thin: gravity does the turning.',
  };
}

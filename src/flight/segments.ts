import type { Stage } from '../mission/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { ThrustSegment } from './types.ts';

/**
 * Splits a burn where boosters burn out or are dropped, and gives each stretch the effective vacuum specific
 * impulse of all that is lit: Isp = ΣT / (g0·Σflow). `throttle` is the stage's own mean throttle in the burn.
 */
export function thrustSegments(
  stage: Stage | null,
  start_s: number,
  end_s: number,
  throttle: number,
  boosterDrops_s: readonly number[],
): ThrustSegment[] {
  if (stage === null) {
    // What burns on both sides of a drop under thrust may be unlike engines.
    const inside = boosterDrops_s.filter((d) => d > start_s + 1 && d < end_s - 1);
    const edges = [start_s, ...inside, end_s];
    return edges.slice(1).map((to, k) => ({ start_s: edges[k]!, end_s: to, isp_s: null, exitArea_m2: null }));
  }
  const lit = stage.boosters.map((booster) => {
    const flow = booster.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * booster.ispVacuum_s);
    const burnout = booster.ignitionTime_s + booster.propellantMass_kg / flow;
    const dropped = boosterDrops_s.find((d) => Math.abs(d - (booster.separationTime_s ?? burnout)) < 5);
    return { booster, flow, from: booster.ignitionTime_s, to: Math.min(burnout, dropped ?? burnout) };
  });
  const edges = new Set<number>([start_s, end_s]);
  for (const b of lit)
    for (const e of [b.from, b.to]) if (e > start_s + 1e-6 && e < end_s - 1e-6) edges.add(e);
  const times = [...edges].sort((a, b) => a - b);
  return times.slice(1).map((to, k) => {
    const from = times[k]!;
    const mid = (from + to) / 2;
    const active = lit.filter((b) => b.from <= mid && mid < b.to);
    if (active.length === 0)
      return { start_s: from, end_s: to, isp_s: stage.ispVacuum_s, exitArea_m2: stage.exitArea_m2 };
    if (stage.ispVacuum_s === null || stage.thrustVacuum_N === null) {
      return { start_s: from, end_s: to, isp_s: null, exitArea_m2: null };
    }
    let thrust = throttle * stage.thrustVacuum_N;
    let flow = thrust / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
    let area = stage.exitArea_m2;
    for (const { booster, flow: each } of active) {
      thrust += booster.count * booster.thrustVacuum_N;
      flow += booster.count * each;
      if (area !== null) area += booster.count * booster.exitArea_m2;
    }
    return { start_s: from, end_s: to, isp_s: thrust / (STANDARD_GRAVITY_M_S2 * flow), exitArea_m2: area };
  });
}

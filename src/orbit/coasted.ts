import type { PlanarState } from './toGoTypes.ts';

/**
 * A state a moment later (or earlier) on its ballistic arc, by one Runge–Kutta step of fourth order: for moments
 * that are short against the orbit's period.
 */
export function coasted(mu_m3_s2: number, state: PlanarState, time_s: number): PlanarState {
  const momentum = state.radius_m * state.tangentialSpeed_m_s;
  const pull = (r: number): number => (momentum * momentum) / (r * r * r) - mu_m3_s2 / (r * r);
  const { radius_m: r, radialSpeed_m_s: v } = state;
  const t = time_s;
  const a1 = pull(r);
  const v2 = v + (a1 * t) / 2;
  const a2 = pull(r + (v * t) / 2);
  const v3 = v + (a2 * t) / 2;
  const a3 = pull(r + (v2 * t) / 2);
  const v4 = v + a3 * t;
  const a4 = pull(r + v3 * t);
  const radius_m = r + (t / 6) * (v + 2 * v2 + 2 * v3 + v4);
  return {
    radius_m,
    radialSpeed_m_s: v + (t / 6) * (a1 + 2 * a2 + 2 * a3 + a4),
    tangentialSpeed_m_s: momentum / radius_m,
  };
}

/** Stumpff's functions c0, c1, c2 and c3 of one argument. */
export interface Stumpff {
  c0: number;
  c1: number;
  c2: number;
  c3: number;
}

/**
 * Stumpff's functions cₖ(z) = Σ (−z)ⁿ/(k + 2n)!, which write circular, parabolic and hyperbolic motion in one
 * form: c0 = cos √z, c1 = sin √z/√z, c2 = (1 − cos √z)/z, c3 = (√z − sin √z)/√z³ for z > 0, the hyperbolic
 * twins for z < 0. Series near zero, where the closed forms cancel. Writes into `into` when given.
 *
 * Source: Stumpff 1959; Danby 1988, §6.9, eqs. 6.9.5–6.9.15.
 */
export function stumpff(z: number, into: Stumpff = { c0: 0, c1: 0, c2: 0, c3: 0 }): Stumpff {
  if (z > 0.1) {
    const s = Math.sqrt(z);
    const half = Math.sin(0.5 * s);
    const sine = Math.sin(s);
    into.c0 = 1 - 2 * half * half;
    into.c1 = sine / s;
    into.c2 = (2 * half * half) / z;
    into.c3 = (s - sine) / (s * z);
  } else if (z < -0.1) {
    const s = Math.sqrt(-z);
    const half = Math.sinh(0.5 * s);
    const sine = Math.sinh(s);
    into.c0 = 1 + 2 * half * half;
    into.c1 = sine / s;
    into.c2 = (2 * half * half) / -z;
    into.c3 = (sine - s) / (s * -z);
  } else {
    // Seven terms: the first one left out is below 1e-19 of the sum for |z| ≤ 0.1.
    into.c3 =
      (1 - (z / 20) * (1 - (z / 42) * (1 - (z / 72) * (1 - (z / 110) * (1 - (z / 156) * (1 - z / 210)))))) /
      6;
    into.c2 =
      (1 - (z / 12) * (1 - (z / 30) * (1 - (z / 56) * (1 - (z / 90) * (1 - (z / 132) * (1 - z / 182)))))) / 2;
    into.c1 = 1 - z * into.c3;
    into.c0 = 1 - z * into.c2;
  }
  return into;
}

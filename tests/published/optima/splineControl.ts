import type { Program } from '../../../src/refly/controls.ts';

/** A control through nodes by a natural cubic spline over time (Press et al., Numerical Recipes, §3.3). */
export function splineControl(time_s: readonly number[], value: ArrayLike<number>): Program {
  const n = time_s.length;
  const bend = new Float64Array(n);
  const u = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const before = time_s[i]! - time_s[i - 1]!;
    const after = time_s[i + 1]! - time_s[i]!;
    const share = before / (before + after);
    const p = share * bend[i - 1]! + 2;
    bend[i] = (share - 1) / p;
    const turn = (value[i + 1]! - value[i]!) / after - (value[i]! - value[i - 1]!) / before;
    u[i] = ((6 * turn) / (before + after) - share * u[i - 1]!) / p;
  }
  for (let i = n - 2; i >= 0; i--) bend[i] = bend[i]! * bend[i + 1]! + u[i]!;
  return {
    at: ({ time_s: t }) => {
      let i = 0;
      while (i < n - 2 && time_s[i + 1]! < t) i++;
      const h = time_s[i + 1]! - time_s[i]!;
      const b = (t - time_s[i]!) / h;
      const a = 1 - b;
      return (
        a * value[i]! +
        b * value[i + 1]! +
        (((a ** 3 - a) * bend[i]! + (b ** 3 - b) * bend[i + 1]!) * h * h) / 6
      );
    },
  };
}

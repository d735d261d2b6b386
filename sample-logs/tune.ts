import type { Ascent } from '../src/refly/ascent.ts';
import type { ClassicAscent } from '../src/refly/classicAscent.ts';
import { classicAscent } from '../src/refly/classicAscent.ts';

/** Where the last burn is to end. */
export interface Aim {
  readonly altitude_m: number;
  readonly verticalSpeed_m_s: number;
}

type Untuned = Omit<ClassicAscent, 'a' | 'b'>;

/** Misses of altitude (km) and vertical speed (10 m/s) at the end of the last burn. */
function miss(ascent: Ascent, shape: ClassicAscent, aim: Aim): [number, number] {
  const result = ascent.fly(classicAscent(shape));
  const end = ascent.observe(result.time_s, result.state);
  const early = result.end === 'flown' && end.stage === shape.stages - 1 ? 0 : 1000;
  return [
    (end.altitude_m - aim.altitude_m) / 1000 + early,
    (end.verticalSpeed_m_s - aim.verticalSpeed_m_s) / 10 + early,
  ];
}

/**
 * Finds the two numbers of linear-tangent steering that end the last burn at an altitude and vertical speed:
 * a coarse grid, then Newton's method with difference quotients and halved steps. Null where nothing comes near.
 */
export function tuneTangent(ascent: Ascent, shape: Untuned, aim: Aim): ClassicAscent | null {
  const size = (m: readonly [number, number]) => Math.hypot(m[0], m[1]);
  const at = (a: number, b: number) => miss(ascent, { ...shape, a, b }, aim);
  let a = 0;
  let b = 0;
  let here: [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (let i = -4; i <= 12; i++)
    for (let j = -4; j <= 8; j++) {
      const there = at(0.15 * i, 0.001 * j);
      if (size(there) >= size(here)) continue;
      a = 0.15 * i;
      b = 0.001 * j;
      here = there;
    }
  for (let round = 0; round < 40 && size(here) > 1e-6; round++) {
    const da = 1e-5;
    const db = 1e-7;
    const alongA = at(a + da, b);
    const alongB = at(a, b + db);
    const j11 = (alongA[0] - here[0]) / da;
    const j21 = (alongA[1] - here[1]) / da;
    const j12 = (alongB[0] - here[0]) / db;
    const j22 = (alongB[1] - here[1]) / db;
    const determinant = j11 * j22 - j12 * j21;
    const stepA = (j22 * here[0] - j12 * here[1]) / determinant;
    const stepB = (j11 * here[1] - j21 * here[0]) / determinant;
    let part = 1;
    let there = at(a - stepA, b - stepB);
    while (!(size(there) < size(here)) && part > 1e-4) {
      part /= 2;
      there = at(a - part * stepA, b - part * stepB);
    }
    if (!(size(there) < size(here))) break;
    a -= part * stepA;
    b -= part * stepB;
    here = there;
  }
  return size(here) < 1e-3 ? { ...shape, a, b } : null;
}

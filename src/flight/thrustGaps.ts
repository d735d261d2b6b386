import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { Burn } from './types.ts';

/**
 * What the engines did in each gap between neighbouring axis points i and i+1; 0 where nothing burns.
 * `vacuum` is ∫Tvac/m dt, `back` is ∫p·Ae/m dt, both in m/s; their difference is ∫T/m dt.
 */
export interface ThrustGaps {
  readonly vacuum: Float64Array;
  readonly back: Float64Array;
  /** Index of the burn in each gap, −1 between burns. */
  readonly burn: Int16Array;
  /** True where every burn has an engine that is known (card or logged thrust). */
  readonly known: boolean;
  readonly backKnown: boolean;
}

/**
 * Books the engines gap by gap: g0·Isp·ln(m_i/m_{i+1}) (Tsiolkovsky 1903) where the specific impulse is known,
 * else the logged thrust over mass with the back pressure put back.
 */
export function thrustGaps(
  time: Float64Array,
  mass: Float64Array | null,
  pressure: Float64Array,
  loggedThrust: Float64Array | null,
  burns: readonly Burn[],
): ThrustGaps {
  const n = Math.max(0, time.length - 1);
  const vacuum = new Float64Array(n);
  const back = new Float64Array(n);
  const index = new Int16Array(n).fill(-1);
  let known = mass !== null;
  let backKnown = mass !== null;
  burns.forEach((burn, b) => {
    let s = 0;
    for (let i = burn.startIndex; i < burn.endIndex; i++) {
      index[i] = b;
      if (mass === null) continue;
      const mid = (time[i]! + time[i + 1]!) / 2;
      while (s + 1 < burn.segments.length && burn.segments[s]!.end_s <= mid) s++;
      const segment = burn.segments[s]!;
      const dt = time[i + 1]! - time[i]!;
      const meanMass = (mass[i]! + mass[i + 1]!) / 2;
      const meanPressure = (pressure[i]! + pressure[i + 1]!) / 2;
      const area = segment.exitArea_m2;
      // A drop's two points are a microsecond apart: what falls there is not burnt.
      const isDrop = dt < 5e-6;
      if (area !== null) back[i] = ((meanPressure * area) / meanMass) * dt;
      else if (meanPressure > 1) backKnown = false;
      if (segment.isp_s !== null) {
        vacuum[i] = isDrop ? 0 : STANDARD_GRAVITY_M_S2 * segment.isp_s * Math.log(mass[i]! / mass[i + 1]!);
      } else if (loggedThrust !== null) {
        const thrust = (loggedThrust[i]! + loggedThrust[i + 1]!) / 2;
        vacuum[i] = (thrust / meanMass) * dt + back[i]!;
      } else known = false;
    }
  });
  return { vacuum, back, burn: index, known: known && burns.length > 0, backKnown };
}

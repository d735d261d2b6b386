import type { Flight } from '../types.ts';

/** Drag area over mass of a coasting body, identified from its path. */
export interface DragPerMass {
  /** CdA/m, m²/kg; its reciprocal is the ballistic coefficient. */
  readonly value_m2_kg: number;
  readonly sigma_m2_kg: number;
  /** Stretches of the path that it rests on. */
  readonly stretches: number;
  /** Least and greatest Mach number of them. */
  readonly mach: readonly [number, number];
}

/** Speed that the air takes in one stretch: enough to stand out of the noise. */
const STRETCH_NOISES = 20;
const LEAST_CHANGE_M_S = 2;
const LEAST_STRETCHES = 3;

/**
 * Identifies CdA/m between two axis points of an unpowered descent, in integral form so that the log is not
 * differentiated: −Δ|v| − ∫(g − ω²r·cos²φ)·sin γ dt = (CdA/m)·∫q dt over stretches in which the air takes a fair
 * speed, by least squares; the scatter of the stretches (noise, and the Mach number's doing) gives the error.
 * Null where the air does too little.
 */
export function dragPerMass(flight: Flight, from: number, to: number): DragPerMass | null {
  const { time, speed, verticalSpeed, radius, track, dynamicPressure, mach, mission, noise } = flight;
  const spin = mission.world.spin_rad_s ** 2;
  const wanted = Math.max(LEAST_CHANGE_M_S, STRETCH_NOISES * noise.speed_m_s);
  const taken: number[] = [];
  const pressed: number[] = [];
  let [low, high] = [Number.POSITIVE_INFINITY, 0];
  let start = from;
  let climb = 0;
  let push = 0;
  const pull = (i: number): number => {
    const r = radius[i]!;
    const g = mission.world.mu_m3_s2 / (r * r) - spin * r * Math.cos(track.latitude[i]!) ** 2;
    return (g * verticalSpeed[i]!) / Math.max(1, speed[i]!);
  };
  for (let i = from; i < to; i++) {
    const dt = time[i + 1]! - time[i]!;
    climb += ((pull(i) + pull(i + 1)) / 2) * dt;
    push += meanOf(dynamicPressure[i]!, dynamicPressure[i + 1]!) * dt;
    const lost = speed[start]! - speed[i + 1]! - climb;
    if (lost < wanted) {
      // Before the air is felt, gravity's own errors must not pile up.
      if (dynamicPressure[i + 1]! < 1) {
        start = i + 1;
        climb = 0;
        push = 0;
      }
      continue;
    }
    taken.push(lost);
    pressed.push(push);
    low = Math.min(low, mach[start]!, mach[i + 1]!);
    high = Math.max(high, mach[start]!, mach[i + 1]!);
    start = i + 1;
    climb = 0;
    push = 0;
  }
  const n = taken.length;
  if (n < LEAST_STRETCHES) return null;
  let xx = 0;
  let xy = 0;
  for (let k = 0; k < n; k++) {
    xx += pressed[k]! ** 2;
    xy += pressed[k]! * taken[k]!;
  }
  const value = xy / xx;
  let rest = 0;
  for (let k = 0; k < n; k++) rest += (taken[k]! - value * pressed[k]!) ** 2;
  const sigma = Math.sqrt(rest / (n - 1) / xx);
  return { value_m2_kg: value, sigma_m2_kg: sigma, stretches: n, mach: [low, high] };
}

/** Mean of the pressure over a gap; it grows by powers, so the logarithmic mean. */
function meanOf(a: number, b: number): number {
  if (a <= 0 || b <= 0 || Math.abs(a - b) < 1e-6 * a) return (a + b) / 2;
  return (a - b) / Math.log(a / b);
}

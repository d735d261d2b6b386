import type { World } from '../world/types.ts';

/** What acts along the ground-relative velocity at each point, per unit mass (METHODS §2). */
export interface AlongPath {
  /** g·sin γ, m/s²; sin γ is the ratio ḣ/|v| where that is less than one, else the path angle's. */
  readonly pull: Float64Array;
  /** Gravity, m/s². */
  readonly gravity: Float64Array;
  /** Cosine between thrust axis and velocity; 0 where the log has no pitch. */
  readonly push: Float64Array;
  /** Centrifugal acceleration along the velocity, m/s². */
  readonly spin: Float64Array;
}

/** State that the projections need; angles in rad, arrays on one axis. */
export interface PathState {
  readonly radius: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly flightPathAngle: Float64Array;
  readonly pitch: Float64Array | null;
  readonly course: Float64Array;
  readonly heading: Float64Array;
  readonly latitude: Float64Array;
}

/** Gravity, thrust direction and the turning ground's centrifugal acceleration along the path. */
export function alongPath(world: World, state: PathState): AlongPath {
  const { radius, speed, verticalSpeed, flightPathAngle, pitch, course, heading, latitude } = state;
  const n = speed.length;
  const gravity = new Float64Array(n);
  const pull = new Float64Array(n);
  const push = new Float64Array(n);
  const spin = new Float64Array(n);
  const { mu_m3_s2, spin_rad_s } = world;
  for (let i = 0; i < n; i++) {
    const r = radius[i]!;
    const gamma = flightPathAngle[i]!;
    const v = speed[i]!;
    const sinGamma =
      v > 0 && gamma < Math.PI / 2 && Math.abs(verticalSpeed[i]!) < v
        ? verticalSpeed[i]! / v
        : Math.sin(gamma);
    gravity[i] = mu_m3_s2 / (r * r);
    pull[i] = gravity[i]! * sinGamma;
    if (pitch !== null) {
      const theta = pitch[i]!;
      push[i] =
        Math.sin(theta) * Math.sin(gamma) +
        Math.cos(theta) * Math.cos(gamma) * Math.cos(heading[i]! - course[i]!);
    }
    const phi = latitude[i]!;
    const outward = spin_rad_s * spin_rad_s * r * Math.cos(phi);
    spin[i] =
      outward * (Math.cos(phi) * Math.sin(gamma) - Math.sin(phi) * Math.cos(gamma) * Math.cos(course[i]!));
  }
  return { gravity, pull, push, spin };
}

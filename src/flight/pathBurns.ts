import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import { radiusAt_m } from '../world/radius.ts';
import { airAlongPath } from './air.ts';
import type { RawBurn } from './burnEdges.ts';
import { isDragLike } from './dragLike.ts';
import { type ForceEvidence, forceBurns, type PathMotion } from './forceBurns.ts';
import { deriveKinematics } from './kinematics.ts';

/** Burns of a log with neither throttle nor thrust nor mass, from its altitude and speed alone. */
export function pathBurns(log: Log, t: Float64Array, mission: Mission): ForceEvidence {
  const path = deriveKinematics(log, t, t, []);
  const { world, site } = mission;
  const spin = world.spin_rad_s ** 2 * Math.cos(site.latitude_rad) ** 2;
  const coasting = path.altitude.map((h, i) => {
    const r = radiusAt_m(world, h, site.latitude_rad);
    const v = path.speed[i]!;
    const rise = v > 1 ? Math.max(-1, Math.min(1, path.verticalSpeed[i]! / v)) : 1;
    return (spin * r - world.mu_m3_s2 / (r * r)) * rise;
  });
  const motion: PathMotion = {
    t,
    speed: path.speed,
    coasting,
    dynamicPressure: airAlongPath(world, path.altitude, path.speed).dynamicPressure,
    speedSigma_m_s: path.speedSigma_m_s,
  };
  const found = forceBurns(motion);
  const falling = (burn: RawBurn): boolean =>
    path.altitude[burn.last]! < path.altitude[burn.first]! &&
    path.speed[burn.last]! < path.speed[burn.first]!;
  const burns = found.burns.filter((b) => !falling(b) || !isDragLike(motion, b.start_s, b.end_s));
  return { ...found, burns };
}

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
    rise_s: riseOf(t, path.altitude),
  };
  const found = forceBurns(motion);
  const falling = (burn: RawBurn): boolean => path.altitude[burn.last]! < path.altitude[burn.first]!;
  const burns = found.burns.filter((b) => !falling(b) || !isDragLike(motion, b.start_s, b.end_s));
  return { ...found, burns };
}

/** What the vehicle must have come down again, as a share of its height, for the highest point to be known. */
const COME_DOWN = 0.1;

function riseOf(t: Float64Array, altitude: Float64Array): number {
  let top = 0;
  for (let i = 1; i < altitude.length; i++) if (altitude[i]! > altitude[top]!) top = i;
  const height = altitude[top]! - altitude[0]!;
  const fallen = altitude[top]! - altitude[altitude.length - 1]!;
  return fallen > COME_DOWN * height ? t[top]! : Number.POSITIVE_INFINITY;
}

import type { StateVector } from '../orbit/kepler.ts';
import type { Flight } from './types.ts';

/**
 * Position and inertial velocity at axis point `i`, axes inertial, z to the north pole, x through the prime
 * meridian at lift-off. As sure as the track is (METHODS §3): its plane is assumed where no direction is logged.
 */
export function inertialState(flight: Flight, i: number): StateVector {
  const { time, radius, verticalSpeed, track, mission } = flight;
  const latitude = track.latitude[i]!;
  const longitude = track.longitude[i]! + mission.world.spin_rad_s * time[i]!;
  const [sinLat, cosLat] = [Math.sin(latitude), Math.cos(latitude)];
  const [sinLon, cosLon] = [Math.sin(longitude), Math.cos(longitude)];
  const r = radius[i]!;
  const up = verticalSpeed[i]!;
  const east = track.inertialEast[i]!;
  const north = track.inertialNorth[i]!;
  return {
    position_m: [r * cosLat * cosLon, r * cosLat * sinLon, r * sinLat],
    velocity_m_s: [
      up * cosLat * cosLon - east * sinLon - north * sinLat * cosLon,
      up * cosLat * sinLon + east * cosLon - north * sinLat * sinLon,
      up * sinLat + north * cosLat,
    ],
  };
}

/**
 * The same in the plane of the motion alone, for logs that show no direction: x through the place at axis point
 * `first`, the way from there to `i` counted from the horizontal inertial speed.
 */
export function inPlaneState(flight: Flight, first: number, i: number): StateVector {
  const { time, radius, verticalSpeed, track } = flight;
  const across = track.inertialHorizontalSpeed;
  let angle = 0;
  for (let k = first; k < i; k++)
    angle += ((across[k]! / radius[k]! + across[k + 1]! / radius[k + 1]!) / 2) * (time[k + 1]! - time[k]!);
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const [r, up, along] = [radius[i]!, verticalSpeed[i]!, across[i]!];
  return {
    position_m: [r * cos, r * sin, 0],
    velocity_m_s: [up * cos - along * sin, up * sin + along * cos, 0],
  };
}

import { decimal } from '../wording.ts';
import type { Candidate, Finder, Occasion } from './types.ts';

const DEG = 180 / Math.PI;

/** What the direction of launch cost: rotation not used, and a plane beside the target's. */
export const directionFindings: Finder = (o) => [...plane(o), ...rotation(o)];

function plane(o: Occasion): Candidate[] {
  const { flight, orbit, span } = o;
  const { target } = flight.mission;
  const flown = orbit.inclination_deg;
  if (target.kind !== 'orbit' || target.inclination_rad === null || flown.value === null) return [];
  const off = Math.abs(flown.value / DEG - target.inclination_rad);
  const across = flight.track.inertialHorizontalSpeed[span.end]!;
  // A plane turned at once at this speed: 2·V·sin(Δi/2).
  const cost = 2 * across * Math.sin(off / 2);
  const half = flown.high === null || flown.low === null ? 0 : (flown.high - flown.low) / 3.92 / DEG;
  return [
    {
      code: 'plane-error',
      start_s: 0,
      end_s: flight.time[span.end]!,
      cost_m_s: cost,
      sigma_m_s: across * half,
      claim: 'plane',
      text: `The orbit’s plane is ${decimal(off * DEG, 1)}° off the target’s.`,
      evidence: `Inclination ${decimal(flown.value, 1)}°, target ${decimal(target.inclination_rad * DEG, 1)}°; turning the plane at this speed would take ${decimal(cost, 0)} m/s.`,
      advice: 'Correct the launch azimuth, or steer back to the plane early, while the speed is low.',
    },
  ];
}

/**
 * With the spin from the site the ground gives |ω|·r·cos(latitude); in a plane of inclination i it gives ω·r·cos(i),
 * where a world that turns westward (ω < 0) helps orbits of more than 90°.
 */
function rotation(o: Occasion): Candidate[] {
  const { flight, span, orbit } = o;
  const { target, world, site } = flight.mission;
  if (target.kind !== 'orbit' || target.inclination_rad !== null || !span.isCutoff) return [];
  if (!site.latitudeKnown || world.spin_rad_s === 0 || orbit.inclination_deg.value === null) return [];
  const ground = world.spin_rad_s * world.radius_m;
  const most = Math.abs(ground) * Math.cos(site.latitude_rad);
  const given = ground * Math.cos(orbit.inclination_deg.value / DEG);
  return [
    {
      code: 'rotation-not-used',
      start_s: 0,
      end_s: flight.time[span.end]!,
      cost_m_s: most - given,
      // A degree of launch azimuth is nobody's fault.
      sigma_m_s: 0.02 * most,
      claim: 'plane',
      text:
        given < 0
          ? `The world’s rotation worked against the launch: it took ${decimal(-given, 0)} m/s where a launch ${ground > 0 ? 'eastward' : 'westward'} gains ${decimal(most, 0)}.`
          : `The world’s rotation was not used: it gave ${decimal(given, 0)} of ${decimal(most, 0)} m/s.`,
      evidence: `The card asks for no inclination, and the orbit is inclined by ${decimal(orbit.inclination_deg.value, 0)}° from a site at ${decimal(Math.abs(site.latitude_rad) * DEG, 0)}° of latitude.`,
      advice: `Launch toward the ${ground > 0 ? 'east' : 'west'} unless the orbit has to have another plane.`,
    },
  ];
}

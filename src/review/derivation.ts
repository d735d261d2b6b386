import type { Flight } from '../flight/types.ts';
import type { Basis } from './types.ts';

interface Line {
  readonly quantity: string;
  readonly basis: Basis;
  readonly how: string;
}

/** Quantity by quantity: measured, derived, assumed or unavailable, and how (METHODS §3). */
export function derivationList(flight: Flight): Line[] {
  const { log, mission, gaps } = flight;
  const fitted = flight.identified?.adopted === true ? flight.identified : null;
  const start = mission.vehicle === null ? 'no card' : 'the card’s values as a start';
  const lines: Line[] = [...flight.derivations];
  const has = log.channels;
  lines.push(
    flight.mass === null
      ? missing('mass', 'the log has no mass')
      : log.channels.mass === undefined
        ? {
            quantity: 'mass',
            basis: 'derived',
            how: 'the card’s lift-off mass less what thrust, specific impulse and throttle burn',
          }
        : { quantity: 'mass', basis: 'measured', how: 'logged' },
  );
  lines.push(
    has.thrust !== undefined && !cardKnowsIsp(flight)
      ? { quantity: 'thrust', basis: 'measured', how: 'logged' }
      : fitted !== null && gaps.known
        ? {
            quantity: 'thrust',
            basis: 'identified',
            how: `propellant flow of the mass channel times the specific impulse that the equation of motion asks for (${start})`,
          }
        : gaps.known
          ? {
              quantity: 'thrust',
              basis: 'derived',
              how: 'propellant flow of the mass channel times the card’s specific impulse',
            }
          : missing(
              'thrust',
              flight.mass === null
                ? 'the log has no mass to take the flow from'
                : flight.burns.length === 0
                  ? 'no burn was found'
                  : 'neither card nor log tells the engine',
            ),
  );
  lines.push(
    mission.world.atmosphere === null
      ? { quantity: 'drag', basis: 'derived', how: 'none: the world has no air' }
      : has.drag !== undefined && flight.mass !== null
        ? { quantity: 'drag', basis: 'measured', how: 'logged' }
        : fitted !== null && fitted.dragArea_m2 !== null
          ? {
              quantity: 'drag',
              basis: 'identified',
              how: `½ρv²·CdA(Mach) with the drag area that the equation of motion asks for (${start}) and the ${mission.world.atmosphere.model} air`,
            }
          : mission.vehicle !== null &&
              flight.mass !== null &&
              mission.vehicle.stages.some((s) => s.dragCoefficient !== null && s.referenceArea_m2 !== null)
            ? {
                quantity: 'drag',
                basis: 'derived',
                how: `½ρv²·CdA(Mach) with the card’s drag area and the ${mission.world.atmosphere.model} air`,
              }
            : missing('drag', 'neither card nor log tells the drag area'),
  );
  lines.push(
    flight.pitch === null
      ? missing('pitch', 'the log has no pitch: steering cannot be told')
      : { quantity: 'pitch', basis: 'measured', how: 'logged' },
  );
  return lines;
}

function cardKnowsIsp(flight: Flight): boolean {
  return flight.burns.every((b) => b.segments.every((s) => s.isp_s !== null));
}

function missing(quantity: string, how: string): Line {
  return { quantity, basis: 'unavailable', how };
}

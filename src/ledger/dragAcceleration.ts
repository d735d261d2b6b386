import type { Flight } from '../flight/types.ts';
import { dragArea_m2 } from '../mission/vehicle.ts';

/**
 * Drag over mass at each axis point, m/s²: logged drag where there is any, else q·CdA(M)/m with the card's drag
 * area of the stage, or the identified one where that was adopted; zeros on a world without air; null where neither is known.
 */
export function dragAcceleration(flight: Flight): Float64Array | null {
  const { mission, mass, dynamicPressure, mach, stage, loggedDrag } = flight;
  const n = dynamicPressure.length;
  if (mission.world.atmosphere === null) return new Float64Array(n);
  if (mass === null) return null;
  if (loggedDrag !== null) return loggedDrag.map((d, i) => d / mass[i]!);
  const fitted = flight.identified?.adopted === true ? flight.identified.dragArea_m2 : null;
  if (fitted !== null) return fitted.map((area, i) => (dynamicPressure[i]! * area) / mass[i]!);
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    if (dynamicPressure[i] === 0) continue;
    const shape = mission.vehicle?.stages[stage[i]!];
    // What flies on after the last stage has a drag of its own, which the way down tells.
    if (shape === undefined && (mission.vehicle?.stages.length ?? 0) > 0) {
      out[i] = Number.NaN;
      continue;
    }
    const area = shape === undefined ? null : dragArea_m2(shape, mach[i]!);
    if (area === null) return null;
    out[i] = (dynamicPressure[i]! * area) / mass[i]!;
  }
  return out;
}

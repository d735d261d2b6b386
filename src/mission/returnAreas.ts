import type { ReturnVehicle } from './types.ts';

/** Drag coefficient × reference area of the bare body that comes down, m²; 0 where the card lacks either. */
export function bareDragArea_m2(body: ReturnVehicle): number {
  return (body.referenceArea_m2 ?? 0) * (body.dragCoefficient ?? 0);
}

/** Drag area of all the card's parachutes, filled, m²; 0 where it has none. */
export function parachutesDragArea_m2(body: ReturnVehicle): number {
  return body.parachutes.reduce((sum, p) => sum + p.count * p.dragArea_m2, 0);
}

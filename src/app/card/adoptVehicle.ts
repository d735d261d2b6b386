import type { Figure, ReviewVehicle } from '../../review/types.ts';
import { type Json, type JsonObject, listAt, valueAt, withValue } from './cardDraft.ts';

/** Four digits are more than a log ever fixes. */
function rounded(figure: Figure): number | undefined {
  if (figure.value === null || figure.basis !== 'identified') return undefined;
  return Number(figure.value.toPrecision(4));
}

function stageIndex(card: JsonObject, name: string, place: number): number {
  const stages = listAt(card, ['vehicle', 'stages']);
  const named = stages.findIndex((stage) => valueAt(stage, ['name']) === name);
  return named >= 0 ? named : place;
}

/**
 * The card with the values that the log fixes in place of its own. What only an assumption fixes is left as it is,
 * and so are values of a stretch after boosters dropped, for which the card has no field.
 */
export function adoptVehicle(card: JsonObject, vehicle: ReviewVehicle): JsonObject {
  let next = card;
  const put = (stage: number, key: string, value: Json | undefined) => {
    if (value !== undefined) next = withValue(next, ['vehicle', 'stages', stage, key], value);
  };
  const whole = vehicle.stages.filter((s) => s.stretch === 0);
  for (const [place, stage] of whole.entries()) {
    const at = stageIndex(card, stage.name, place);
    if (valueAt(next, ['vehicle', 'stages', at, 'name']) === undefined) put(at, 'name', stage.name);
    put(at, 'ispVacuum_s', rounded(stage.isp_s));
    put(at, 'thrustVacuum_N', rounded(stage.thrustVacuum_N));
    const area = rounded(stage.exitArea_m2);
    put(at, 'exitArea_m2', area);
    // Both would say the same thing twice, and differently.
    if (area !== undefined) next = withValue(next, ['vehicle', 'stages', at, 'ispSeaLevel_s'], undefined);
  }
  const nodes = (vehicle.dragArea ?? []).flatMap(({ mach, dragArea_m2 }) => {
    const area_m2 = rounded(dragArea_m2);
    return area_m2 === undefined ? [] : [{ mach, area_m2 }];
  });
  if (nodes.length === 0) return next;
  const given = valueAt(next, ['vehicle', 'stages', 0, 'referenceArea_m2']);
  const reference = typeof given === 'number' && given > 0 ? given : 1;
  put(0, 'referenceArea_m2', reference);
  put(
    0,
    'dragCoefficient',
    nodes.map(({ mach, area_m2 }) => [mach, Number((area_m2 / reference).toPrecision(4))]),
  );
  return next;
}

import { expect, test } from 'vitest';
import { bareDragArea_m2, parachutesDragArea_m2 } from '../../src/mission/returnAreas.ts';

const body = {
  mass_kg: null,
  referenceArea_m2: 4,
  dragCoefficient: 1.25,
  noseRadius_m: null,
  parachutes: [
    { count: 2, dragArea_m2: 270, openAltitude_m: null, fullAltitude_m: null },
    { count: 1, dragArea_m2: 9, openAltitude_m: 3000, fullAltitude_m: null },
  ],
};

test('each parachute counts as often as it is there; what the card lacks is nought', () => {
  expect(bareDragArea_m2(body)).toBe(5);
  expect(parachutesDragArea_m2(body)).toBe(549);
  expect(bareDragArea_m2({ ...body, dragCoefficient: null })).toBe(0);
  expect(parachutesDragArea_m2({ ...body, parachutes: [] })).toBe(0);
});

import { expect, test } from 'vitest';
import { smallCard, smallCardText } from '../../../src/app/card/smallCard.ts';

test('world and target go into a card and come back', () => {
  for (const choice of [
    { world: 'mars', targetAltitude_m: 250_000 },
    { world: 'moon', targetAltitude_m: null },
    { world: null, targetAltitude_m: 90_000 },
  ]) {
    expect(smallCard(smallCardText(choice))).toEqual(choice);
  }
  expect(smallCardText({ world: null, targetAltitude_m: null })).toBeNull();
  expect(smallCard(null)).toEqual({ world: null, targetAltitude_m: null });
});

test('a card that says more is left alone', () => {
  for (const card of [
    { vehicle: {} },
    { world: { name: 'Threnby' } },
    { target: { kind: 'escape' } },
    { target: { kind: 'orbit', apoapsisAltitude_m: 2e5, periapsisAltitude_m: 1.5e5 } },
  ]) {
    expect(smallCard(JSON.stringify(card))).toBeNull();
  }
});

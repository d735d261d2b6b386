import { expect, test } from 'vitest';
import { cardOf, cardText, moved, pathText, valueAt, withValue } from '../../../src/app/card/cardDraft.ts';

test('a value put at a place makes what leads there, and taking it out leaves nothing empty behind', () => {
  const path = ['vehicle', 'stages', 0, 'ispVacuum_s'];
  const card = withValue({ mission: 'Low Lantern' }, path, 311);
  expect(card).toEqual({ mission: 'Low Lantern', vehicle: { stages: [{ ispVacuum_s: 311 }] } });
  expect(valueAt(card, path)).toBe(311);
  expect(withValue(card, ['vehicle', 'stages', 0], undefined)).toEqual({ mission: 'Low Lantern' });
  expect(withValue({ target: { kind: 'escape' } }, ['target', 'kind'], undefined)).toEqual({});
});

test('a stage stays a stage when its last value is taken out', () => {
  const card = { vehicle: { stages: [{ name: 'lower' }, { name: 'upper' }] } };
  expect(withValue(card, ['vehicle', 'stages', 0, 'name'], undefined)).toEqual({
    vehicle: { stages: [{}, { name: 'upper' }] },
  });
});

test('a field that is changed keeps its place; a card written out reads the same', () => {
  const card = withValue({ target: { kind: 'orbit' }, world: 'mars' }, ['target', 'kind'], 'escape');
  expect(cardText(card)).toMatch(/"world": "mars",\n {2}"target"/);
  const curve = {
    vehicle: {
      stages: [
        {
          dragCoefficient: [
            [0, 0.3],
            [1.05, 5e-1],
          ],
        },
      ],
    },
  };
  expect(cardText(curve)).toContain('[0, 0.3]');
  expect(cardOf(cardText(curve))).toEqual(curve);
});

test('what a text holds is never taken for markup or for a list of numbers', () => {
  const card = { mission: 'a [1,\t2] <b>', flight: { notes: '[3,4]' } };
  expect(cardOf(cardText(card))).toEqual(card);
});

test('places are named as the reader of cards names them', () => {
  expect(pathText(['vehicle', 'stages', 1, 'dryMass_kg'])).toBe('vehicle.stages[1].dryMass_kg');
});

test('a text that is no object has no card', () => {
  expect([cardOf('[1]'), cardOf('{'), cardOf('null')]).toEqual([null, null, null]);
});

test('members of a list change places', () => {
  expect(moved(['a', 'b', 'c'], 2, -1)).toEqual(['a', 'c', 'b']);
  expect(moved(['a', 'b', 'c'], 0, 1)).toEqual(['b', 'a', 'c']);
});

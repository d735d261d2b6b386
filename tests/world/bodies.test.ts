import { expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { EARTH, MARS, MOON, worldByName } from '../../src/world/bodies.ts';
import { worldNames } from '../../src/world/worldNames.ts';

test('worlds are found by name, case ignored', () => {
  expect(worldByName('earth')).toBe(EARTH);
  expect(worldByName('Moon')).toBe(MOON);
  expect(worldByName('MARS')).toBe(MARS);
  expect(worldNames).toEqual(['earth', 'moon', 'mars']);
});

test('an unknown world is an error with the nearest name', () => {
  expect(() => worldByName('erth')).toThrow(LossbookError);
  expect(() => worldByName('erth')).toThrow('there is no world “erth”; did you mean “earth”?');
  expect(() => worldByName('constructor')).toThrow('there is no world “constructor”; use earth');
});

test('floors: 120 km, the top of the air, the ground with a clearance', () => {
  expect(EARTH.orbitFloor_m).toBe(120_000);
  expect(MARS.orbitFloor_m).toBe(MARS.atmosphere?.top_m);
  expect(MOON.orbitFloor_m).toBe(15_000);
  expect(MOON.atmosphere).toBeNull();
});

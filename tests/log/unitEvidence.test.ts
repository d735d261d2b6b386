import { describe, expect, test } from 'vitest';
import { motionUnits, riseRatio } from '../../src/log/unitEvidence.ts';
import { findUnit } from '../../src/units/units.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(600, 0.5);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const inUnit = (
  values: Float64Array,
  quantity: 'time' | 'length' | 'speed',
  spelling: string,
): Float64Array => values.map((x) => x / (findUnit(quantity, spelling)?.factor ?? Number.NaN));

describe('motionUnits', () => {
  // Pairs that the ratio of climb to way and the size of the numbers together can tell.
  test.each([
    ['m', 'm/s', 's'],
    ['km', 'm/s', 's'],
    ['km', 'km/h', 's'],
    ['km', 'km/s', 's'],
    ['m', 'km/h', 's'],
    ['ft', 'mph', 's'],
    ['ft', 'm/s', 's'],
    ['m', 'm/s', 'ms'],
    ['km', 'm/s', 'ms'],
  ])('%s, %s and %s', (length, velocity, clock) => {
    const found = motionUnits(
      { values: inUnit(time, 'time', clock), unit: null },
      { values: inUnit(altitude, 'length', length), unit: null },
      { values: inUnit(speed, 'speed', velocity), unit: null },
    );
    expect([found.altitude.spelling, found.speed.spelling, found.time.spelling]).toEqual([
      length,
      velocity,
      clock,
    ]);
    expect(found.confidence).toBeGreaterThan(0.5);
  });

  test('a written unit is kept and decides the others', () => {
    const feet = findUnit('length', 'ft');
    const found = motionUnits(
      { values: time, unit: null },
      { values: inUnit(altitude, 'length', 'ft'), unit: feet },
      { values: inUnit(speed, 'speed', 'ft/s'), unit: null },
    );
    expect(found.speed.spelling).toBe('ft/s');
    expect(found.confidence).toBeGreaterThan(0.7);
  });
});

test('a straight climb gains all of the way flown, in any unit', () => {
  expect(riseRatio(time, altitude, speed)).toBeGreaterThan(0.95);
  expect(riseRatio(time, altitude, speed)).toBeLessThan(1.01);
  expect(riseRatio(time, inUnit(altitude, 'length', 'km'), speed)).toBeLessThan(0.00101);
});

import { describe, expect, test } from 'vitest';
import { impliedUnit, type Surroundings } from '../../src/log/impliedUnits.ts';
import type { ChannelName } from '../../src/log/types.ts';
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

describe('impliedUnit', () => {
  const nothing: Surroundings = { used: new Map(), known: {} };
  const unitOf = (channel: ChannelName, values: number[], around = nothing): string =>
    impliedUnit(channel, Float64Array.from(values), around).unit.spelling;

  test.each([
    ['throttle', [0, 1, 0.5], '1'],
    ['throttle', [0, 100, 50], '%'],
    ['mach', [0, 25], '1'],
    ['pitch', [90, 45, 0], '°'],
    ['pitch', [1.5708, 0.7, 0], 'rad'],
    ['latitude', [28.5, 28.4], '°'],
    ['latitude', [285_000_000, 284_000_000], 'degE7'],
    ['acceleration', [1, 2, 3.6], 'g'],
    ['acceleration', [9.8, 12, 36], 'm/s2'],
    ['acceleration', [9.81, 12, 20], 'm/s2'],
    ['temperature', [288, 216], 'K'],
    ['temperature', [15, -56], '°C'],
    ['ambientPressure', [101_325, 0], 'Pa'],
    ['ambientPressure', [1013, 0], 'hPa'],
    ['ambientPressure', [101.3, 0], 'kPa'],
    ['dynamicPressure', [0, 35_000], 'Pa'],
    ['dynamicPressure', [0, 35], 'kPa'],
    ['mass', [549_000, 22_000], 'kg'],
    ['thrust', [7_600_000], 'N'],
  ] as const)('%s of %j is in %s', (channel, values, unit) => {
    expect(unitOf(channel, [...values])).toBe(unit);
  });

  test('thrust by the mass it moves', () => {
    const around: Surroundings = { used: new Map(), known: { mass: Float64Array.of(549_000, 140_000) } };
    expect(unitOf('thrust', [7600, 0], around)).toBe('kN');
    expect(unitOf('thrust', [7.6, 0], around)).toBe('MN');
  });

  test('the unit used elsewhere, unless the rate of the altitude says otherwise', () => {
    const up = Float64Array.from(ascent, (x) => x.verticalSpeed_m_s);
    const metres = findUnit('speed', 'm/s');
    if (metres === null) throw new Error('no m/s');
    const around: Surroundings = { used: new Map([['speed', metres] as const]), known: { time, altitude } };
    expect(impliedUnit('verticalSpeed', up, around).unit.spelling).toBe('m/s');
    expect(impliedUnit('verticalSpeed', inUnit(up, 'speed', 'ft/min'), around).unit.spelling).toBe('ft/min');
    expect(impliedUnit('horizontalSpeed', speed, around).unit.spelling).toBe('m/s');
  });
});

import { expect, test } from 'vitest';
import type { Quantity } from '../../src/units/quantity.ts';
import { findUnit } from '../../src/units/units.ts';

// NIST SP 811 (2008), appendix B.8: factors printed in bold there are exact, the others to seven digits.
const exact: [Quantity, string, number][] = [
  ['length', 'ft', 0.3048],
  ['length', 'in', 0.0254],
  ['length', 'yd', 0.9144],
  ['length', 'mi', 1609.344],
  ['length', 'nmi', 1852],
  ['mass', 'lb', 0.45359237],
  ['mass', 'oz', 0.028349523125],
  ['force', 'lbf', 4.4482216152605],
  ['force', 'kgf', 9.80665],
  ['pressure', 'atm', 101325],
  ['pressure', 'bar', 1e5],
  ['acceleration', 'g', 9.80665],
  ['acceleration', 'ft/s2', 0.3048],
  ['speed', 'ft/s', 0.3048],
  ['speed', 'mph', 0.44704],
  ['mass', 'long ton', 1016.0469088],
  ['mass', 'short ton', 907.18474],
];
const rounded: [Quantity, string, number][] = [
  ['pressure', 'psi', 6.894757e3],
  ['pressure', 'psf', 4.788026e1],
  ['pressure', 'mmHg', 1.333224e2],
  ['pressure', 'inHg', 3.386389e3],
  ['pressure', 'torr', 1.333224e2],
  ['pressure', 'kgf/cm2', 9.80665e4],
  ['force', 'kip', 4.448222e3],
  ['mass', 'slug', 1.45939e1],
  ['speed', 'kn', 5.144444e-1],
  ['speed', 'km/h', 2.777778e-1],
  ['angle', '°', 1.745329e-2],
  ['angle', 'arcmin', 2.908882e-4],
  ['angle', 'arcsec', 4.848137e-6],
  ['angle', 'gon', 1.570796e-2],
];

test.each(exact)('%s %s is exactly %d (NIST SP 811)', (quantity, spelling, factor) => {
  // Products of exact factors round in their last bit.
  expect(Math.abs((findUnit(quantity, spelling)?.factor ?? 0) / factor - 1)).toBeLessThan(3e-16);
});

test.each(rounded)('%s %s is %d to seven digits (NIST SP 811)', (quantity, spelling, factor) => {
  expect(Math.abs((findUnit(quantity, spelling)?.factor ?? 0) / factor - 1)).toBeLessThan(5e-7);
});

test('temperatures (NIST SP 811, B.8): 32 °F, 212 °F, 0 °C, 491.67 °R', () => {
  const kelvin = (value: number, spelling: string) => {
    const unit = findUnit('temperature', spelling);
    return value * (unit?.factor ?? 0) + (unit?.offset ?? 0);
  };
  expect(kelvin(32, '°F')).toBeCloseTo(273.15, 12);
  expect(kelvin(212, '°F')).toBeCloseTo(373.15, 12);
  expect(kelvin(0, '°C')).toBe(273.15);
  expect(kelvin(491.67, '°R')).toBeCloseTo(273.15, 12);
});

test('735.2 lbf/ft² is 3.52 N/cm² (AS-506 flight evaluation report, table 4-1, max q)', () => {
  const q = 735.2 * (findUnit('pressure', 'lbf/ft2')?.factor ?? 0);
  expect((q / (findUnit('pressure', 'N/cm2')?.factor ?? 0)).toFixed(2)).toBe('3.52');
});

import { expect, test } from 'vitest';
import type { Quantity } from '../../src/units/quantity.ts';
import { findUnit, findUnitAnywhere, unitSpellings } from '../../src/units/units.ts';
import { unitTables } from '../../src/units/unitTables.ts';

test('one unit has many spellings', () => {
  const same: [Quantity, string[]][] = [
    [
      'speed',
      [
        'm/s',
        'mps',
        'm s-1',
        'm·s⁻¹',
        'm s^-1',
        '(m/s)',
        '[m/s]',
        'M/S',
        'm per s',
        'm / s',
        'meters per second',
      ],
    ],
    ['speed', ['km/h', 'kph', 'kmh', 'KM/H', 'km·h⁻¹', 'km h-1']],
    ['speed', ['ft/s', 'fps', 'ft s-1', 'feet per second']],
    ['speed', ['kn', 'kt', 'knots', 'Knots']],
    ['acceleration', ['m/s²', 'm/s^2', 'm/s2', 'm s⁻²', 'm·s-2', 'm/s/s', 'm/s**2']],
    ['pressure', ['lbf/ft2', 'psf', 'lbf/ft²', 'PSF']],
    ['pressure', ['N/cm2', 'N/cm²', 'N cm⁻²']],
    ['pressure', ['Pa', 'N/m²', 'pascals', 'pa']],
    ['angle', ['°', 'deg', 'degrees', 'Deg', 'º']],
    ['temperature', ['°C', 'degC', 'deg C', 'celsius', 'C']],
    ['time', ['µs', 'μs', 'us']],
    ['length', ['nmi', 'NM', 'nautical miles', 'n mi']],
    ['ratio', ['%', 'percent', 'pct']],
  ];
  for (const [quantity, spellings] of same) {
    const [first = '', ...others] = spellings;
    const unit = findUnit(quantity, first);
    expect(unit, first).not.toBeNull();
    for (const other of others) expect(findUnit(quantity, other), `${first} and ${other}`).toEqual(unit);
  }
});

test('case tells units apart where it must', () => {
  expect(findUnit('force', 'MN')?.factor).toBe(1e6);
  expect(findUnit('time', 'ms')?.factor).toBe(1e-3);
  expect(findUnit('length', 'Mm')?.factor).toBe(1e6);
  expect(findUnit('length', 'mm')?.factor).toBe(1e-3);
  expect(findUnit('mass', 'Mg')?.factor).toBe(1000);
  expect(findUnit('acceleration', 'mg')?.factor).toBeCloseTo(9.80665e-3, 15);
});

test('a spelling can belong to several quantities', () => {
  expect(findUnitAnywhere('g').map((f) => f.quantity)).toEqual(['mass', 'acceleration']);
  expect(findUnitAnywhere('lb').map((f) => f.quantity)).toEqual(['mass', 'force']);
  expect(findUnitAnywhere('km').map((f) => f.quantity)).toEqual(['length']);
  expect(findUnitAnywhere('parsec')).toEqual([]);
});

test('a unit of another quantity is not found', () => {
  expect(findUnit('length', 'm/s')).toBeNull();
  expect(findUnit('text', 'm')).toBeNull();
});

test('the SI unit comes first, and every shown spelling finds its own unit', () => {
  for (const quantity of Object.keys(unitTables) as Quantity[]) {
    const [si] = unitTables[quantity];
    if (si !== undefined) expect([si.factor, si.offset ?? 0], quantity).toEqual([1, 0]);
    for (const spelling of unitSpellings(quantity))
      expect(findUnit(quantity, spelling)?.spelling).toBe(spelling);
  }
});

test('no spelling stands twice within a quantity', () => {
  for (const [quantity, rows] of Object.entries(unitTables)) {
    for (const row of rows) {
      for (const spelling of row.spellings) {
        expect(findUnit(quantity as Quantity, spelling), `${quantity} ${spelling}`).toMatchObject({
          spelling: row.spellings[0],
          factor: row.factor,
        });
      }
    }
  }
});

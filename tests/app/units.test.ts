import { afterEach, expect, test } from 'vitest';
import { inUnits, shownIn, unitSet } from '../../src/app/units.ts';

afterEach(() => {
  unitSet.value = 'km';
});

test('without a choice sentences stay as the engine wrote them', () => {
  const text = 'Not in orbit: 351 m/s short. 160 × −679 km at cutoff.';
  expect(inUnits(text)).toBe(text);
});

test('lengths and speeds of a sentence go over together (NIST SP 811: 1 ft = 0.3048 m, 1 kn = 1852/3600 m/s)', () => {
  unitSet.value = 'ft';
  expect(inUnits('Not in orbit: 351 m/s short')).toBe('Not in orbit: 1,152 ft/s short');
  expect(inUnits('160 × −679 km at cutoff')).toBe('524,934 × −2,227,690 ft at cutoff');
  unitSet.value = 'kn';
  expect(inUnits('351.3 m/s')).toBe('682.9 kn');
  unitSet.value = 'si';
  expect(inUnits('orbit 160 × 160 km ± 8.0 km')).toBe('orbit 160,000 × 160,000 m ± 8,000 m');
});

test('what is no length and no speed stays', () => {
  unitSet.value = 'ft';
  for (const text of ['5.3 m²', '45 m/s²', '12 min 05 s', '36 kPa', '3 missions', 'μ 6.8 m³/s²']) {
    expect(inUnits(text)).toBe(text);
  }
});

test('units of tables and charts', () => {
  expect(shownIn('km', 1e-3)).toEqual({ unit: 'km', scale: 1e-3 });
  unitSet.value = 'kn';
  expect(shownIn('m/s each second', 1).unit).toBe('kn each second');
  expect(shownIn('m/s', 1).scale).toBeCloseTo(3600 / 1852, 12);
  const chart = shownIn('km', 1e-3, 'chart');
  expect(chart.unit).toBe('kft');
  expect(chart.scale).toBeCloseTo(1 / 304.8, 12);
  expect(shownIn('° above horizon', 1)).toEqual({ unit: '° above horizon', scale: 1 });
  expect(shownIn('kPa', 1e-3)).toEqual({ unit: 'kPa', scale: 1e-3 });
});

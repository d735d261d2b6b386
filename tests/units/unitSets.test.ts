import { expect, test } from 'vitest';
import { unitsOf } from '../../src/units/unitSets.ts';

test('without a choice sentences stay as the engine wrote them', () => {
  const text = 'Not in orbit: 351 m/s short. 160 × −679 km at cutoff.';
  expect(unitsOf('km').text(text)).toBe(text);
});

test('lengths and speeds of a sentence go over together (NIST SP 811: 1 ft = 0.3048 m, 1 kn = 1852/3600 m/s)', () => {
  expect(unitsOf('ft').text('Not in orbit: 351 m/s short')).toBe('Not in orbit: 1,152 ft/s short');
  expect(unitsOf('ft').text('160 × −679 km at cutoff')).toBe('524,934 × −2,227,690 ft at cutoff');
  expect(unitsOf('kn').text('351.3 m/s')).toBe('682.9 kn');
  expect(unitsOf('si').text('orbit 160 × 160 km ± 8.0 km')).toBe('orbit 160,000 × 160,000 m ± 8,000 m');
});

test('what is no length and no speed stays', () => {
  for (const text of ['5.3 m²', '12 min 05 s', '36 kPa', '3 missions', 'μ 6.8 m³/s²']) {
    expect(unitsOf('ft').text(text)).toBe(text);
  }
});

test('accelerations go with the lengths, in knots too', () => {
  expect(unitsOf('kn').text('at most 45 m/s²')).toBe('at most 148 ft/s²');
  expect(unitsOf('kn').shownIn('m/s²', 1).scale).toBeCloseTo(1 / 0.3048, 12);
  expect(unitsOf('kn').shownIn('m/s²', 1).unit).toBe('ft/s²');
  expect(unitsOf('si').shownIn('m/s²', 1)).toEqual({ unit: 'm/s²', scale: 1 });
});

test('units of tables and charts', () => {
  expect(unitsOf('km').shownIn('km', 1e-3)).toEqual({ unit: 'km', scale: 1e-3 });
  expect(unitsOf('kn').shownIn('m/s each second', 1).unit).toBe('kn each second');
  expect(unitsOf('kn').shownIn('m/s', 1).scale).toBeCloseTo(3600 / 1852, 12);
  const chart = unitsOf('kn').shownIn('km', 1e-3, 'chart');
  expect(chart.unit).toBe('kft');
  expect(chart.scale).toBeCloseTo(1 / 304.8, 12);
  expect(unitsOf('kn').shownIn('° above horizon', 1)).toEqual({ unit: '° above horizon', scale: 1 });
  expect(unitsOf('kn').shownIn('kPa', 1e-3)).toEqual({ unit: 'kPa', scale: 1e-3 });
});

test('two figures of one unit go over together, however they are joined', () => {
  const { text } = unitsOf('ft');
  expect(text('between 100 and 200 km')).toBe('between 328,084 and 656,168 ft');
  expect(text('from 12.0 to 14.5 m/s')).toBe('from 39 to 48 ft/s');
  expect(text('at 30 s and 200 km')).toBe('at 30 s and 656,168 ft');
});

import { expect, test } from 'vitest';
import { flightStrips } from '../../../src/exchange/report/stripList.ts';
import type { Strips } from '../../../src/review/types.ts';

const massStrip = (mass_kg: readonly number[]) =>
  flightStrips({
    time_s: mass_kg.map((_, i) => i),
    channels: { mass_kg: { values: mass_kg, basis: 'measured' } },
  } as unknown as Strips)[0]!;

test('the mass of a large rocket is drawn in tonnes, of a small one in kilograms', () => {
  expect(massStrip([62_700, Number.NaN, 20_000])).toMatchObject({ title: 'Mass', unit: 't', scale: 1e-3 });
  // In tonnes every tick under it would read 0.
  expect(massStrip([0.1025, 0.09])).toMatchObject({ title: 'Mass', unit: 'kg', scale: 1 });
});

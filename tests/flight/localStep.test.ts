import { expect, test } from 'vitest';
import { localStep } from '../../src/flight/localStep.ts';

const t = Float64Array.from({ length: 100 }, (_, i) => i);

test('the height and spacing of the nearest changes', () => {
  // Steps of 10 every 4 s at first, of 100 every 10 s from 50 s on.
  const y = t.map((at) => (at < 50 ? 10 * Math.floor(at / 4) : 1000 + 100 * Math.floor(at / 10)));
  expect(localStep(t, y, 20)).toEqual({ height: 10, spacing_s: 4 });
  expect(localStep(t, y, 80)).toEqual({ height: 100, spacing_s: 10 });
});

test('a value that never changes has no step', () => {
  expect(localStep(t, new Float64Array(100), 50)).toEqual({ height: 0, spacing_s: 0 });
});

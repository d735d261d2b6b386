import { expect, test } from 'vitest';
import { EARTH } from '../../src/world/bodies.ts';
import { gravity_m_s2 } from '../../src/world/gravity.ts';

test('twice as far, a quarter as strong', () => {
  expect(gravity_m_s2(EARTH, 2 * EARTH.radius_m)).toBeCloseTo(gravity_m_s2(EARTH, EARTH.radius_m) / 4, 14);
});

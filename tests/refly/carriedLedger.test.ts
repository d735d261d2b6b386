import { expect, test } from 'vitest';
import { carriedLedger, groundSpeed_m_s } from '../../src/refly/carriedLedger.ts';
import { fullSize, place } from '../../src/refly/motion.ts';
import { worldOf } from './rockets.ts';

test('takes differences between two states, and speeds in the frame asked for', () => {
  const world = worldOf(1e-4);
  const from = new Float64Array(fullSize);
  from[0] = 3e6;
  from[4] = 300;
  const to = from.slice();
  to[4] = 1300;
  from[place.ideal] = 50;
  to[place.ideal] = 1550;
  to[place.gravity] = 400;
  to[place.inertialGravity] = 350;
  to[place.frame] = -3;
  expect(groundSpeed_m_s(world, from)).toBeCloseTo(0, 9);
  const ground = carriedLedger(world, from, to, 'ground');
  expect(ground.speedGained).toBeCloseTo(1000, 9);
  expect(ground.unexplained).toBeCloseTo(1500 - 400 + 3 - 1000, 9);
  const inertial = carriedLedger(world, from, to, 'inertial');
  expect(inertial.frame).toBe(0);
  expect(inertial.unexplained).toBeCloseTo(1500 - 350 - 1000, 9);
});

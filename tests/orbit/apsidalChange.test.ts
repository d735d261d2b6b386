import { expect, test } from 'vitest';
import { leastApsidalChange } from '../../src/orbit/apsidalChange.ts';
import { hohmannTransfers, planeChange_m_s, speedAtApsis } from '../../src/orbit/transfers.ts';

const mu = 3.986e14;
const circle = (r: number) => ({ apoapsisRadius_m: r, periapsisRadius_m: r });
const ellipse = { apoapsisRadius_m: 9e6, periapsisRadius_m: 7e6 };

test('in one plane it is the cheapest Hohmann transfer', () => {
  for (const goal of [
    circle(1.2e7),
    circle(7e6),
    { apoapsisRadius_m: 2e7, periapsisRadius_m: 8e6 },
    ellipse,
  ]) {
    expect(leastApsidalChange(mu, ellipse, goal).deltaV_m_s).toBeCloseTo(
      hohmannTransfers(mu, ellipse, goal)[0]!.deltaV_m_s,
      9,
    );
  }
});

test('published: LEO to GEO with 28.6° is best split at 2.20511°, 4.233465 km/s (Weber, orbital mechanics notes)', () => {
  const best = leastApsidalChange(mu, circle(6_678_100), circle(42_164_000), (28.6 * Math.PI) / 180);
  expect(best.deltaV_m_s / 1000).toBeCloseTo(4.233465, 6);
  expect((best.firstAngle_rad * 180) / Math.PI).toBeCloseTo(2.20511, 3);
});

test('a turn alone is cheapest at apoapsis', () => {
  const turn = 0.01;
  const best = leastApsidalChange(mu, ellipse, ellipse, turn);
  expect(best.deltaV_m_s).toBeCloseTo(planeChange_m_s(speedAtApsis(mu, 9e6, 7e6), turn), 6);
});

test('no change costs nothing, and lengths scale', () => {
  expect(leastApsidalChange(mu, ellipse, ellipse).deltaV_m_s).toBeCloseTo(0, 9);
  const wide = leastApsidalChange(
    mu * 8,
    { apoapsisRadius_m: 1.8e7, periapsisRadius_m: 1.4e7 },
    circle(2.4e7),
    0.1,
  );
  expect(wide.deltaV_m_s).toBeCloseTo(2 * leastApsidalChange(mu, ellipse, circle(1.2e7), 0.1).deltaV_m_s, 6);
});

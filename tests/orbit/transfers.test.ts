import { describe, expect, test } from 'vitest';
import {
  biEllipticTransfer,
  circularSpeed,
  combinedChange_m_s,
  hohmannTransfers,
  planeChange_m_s,
  planeChangingTransfer,
  speedAtApsis,
} from '../../src/orbit/transfers.ts';

const mu = 3.986004418e14;
const circle = (r: number) => ({ apoapsisRadius_m: r, periapsisRadius_m: r });

describe('hohmannTransfers', () => {
  test('between circles all four pairings are one; there and back cost the same', () => {
    const out = hohmannTransfers(mu, circle(7e6), circle(2e7));
    for (const transfer of out) expect(transfer.deltaV_m_s).toBeCloseTo(out[0]?.deltaV_m_s ?? 0, 9);
    expect(hohmannTransfers(mu, circle(2e7), circle(7e6))[0]?.deltaV_m_s).toBeCloseTo(
      out[0]?.deltaV_m_s ?? 0,
      9,
    );
  });

  test('between ellipses every pairing is priced and the cheapest stands first', () => {
    const low = { apoapsisRadius_m: 9e6, periapsisRadius_m: 7e6 };
    const high = { apoapsisRadius_m: 3e7, periapsisRadius_m: 1.5e7 };
    const all = hohmannTransfers(mu, low, high);
    expect(new Set(all.map((t) => `${t.from} ${t.to}`)).size).toBe(4);
    for (const t of all) {
      expect(t.deltaV_m_s).toBeGreaterThanOrEqual(all[0]?.deltaV_m_s ?? 0);
      // From scratch by vis viva.
      const [a, aOther] = t.from === 'periapsis' ? [7e6, 9e6] : [9e6, 7e6];
      const [b, bOther] = t.to === 'periapsis' ? [1.5e7, 3e7] : [3e7, 1.5e7];
      const v = (at: number, sum: number) => Math.sqrt(mu * (2 / at - 2 / sum));
      const cost = Math.abs(v(a, a + b) - v(a, a + aOther)) + Math.abs(v(b, b + bOther) - v(b, a + b));
      expect(t.deltaV_m_s).toBeCloseTo(cost, 8);
    }
    // Burning low is the cheaper start, and the far apsis the cheaper goal.
    expect(all[0]).toMatchObject({ from: 'periapsis', to: 'apoapsis' });
  });

  test('an orbit to itself costs nothing', () => {
    const orbit = { apoapsisRadius_m: 9e6, periapsisRadius_m: 7e6 };
    expect(hohmannTransfers(mu, orbit, orbit)[0]?.deltaV_m_s).toBeCloseTo(0, 9);
  });
});

describe('biEllipticTransfer', () => {
  test('with the goal as its turning point it is the Hohmann transfer', () => {
    const direct = hohmannTransfers(mu, circle(7e6), circle(2e7))[0];
    const round = biEllipticTransfer(mu, 7e6, 2e7, 2e7);
    expect(round.deltaV_m_s).toBeCloseTo(direct?.deltaV_m_s ?? 0, 8);
  });

  test('pays beyond a ratio of 15.58 however far it turns, and never below 11.94', () => {
    // Hoelker & Silber 1961; Curtis, §6.4.
    for (const [ratio, pays] of [
      [11.9, false],
      [15.6, true],
    ] as const) {
      const direct = hohmannTransfers(mu, circle(7e6), circle(7e6 * ratio))[0]?.deltaV_m_s ?? 0;
      for (const turn of [1.01, 2, 10, 1e4])
        expect(biEllipticTransfer(mu, 7e6, 7e6 * ratio * turn, 7e6 * ratio).deltaV_m_s < direct).toBe(pays);
    }
  });
});

describe('plane changes', () => {
  test('with no angle only the speed changes, with equal speeds only the plane', () => {
    expect(combinedChange_m_s(7000, 7500, 0)).toBeCloseTo(500, 10);
    expect(combinedChange_m_s(7000, 7000, 0.3)).toBeCloseTo(planeChange_m_s(7000, 0.3), 9);
    // The cosine rule.
    expect(combinedChange_m_s(7000, 8000, 1)).toBeCloseTo(
      Math.sqrt(7e3 ** 2 + 8e3 ** 2 - 1.12e8 * Math.cos(1)),
      8,
    );
  });

  test('a climbing path turns with its level speed only', () => {
    expect(planeChange_m_s(7000, 0.3, 1)).toBeCloseTo(planeChange_m_s(7000 * Math.cos(1), 0.3), 9);
  });

  test('the best split is no dearer than its neighbours', () => {
    const best = planeChangingTransfer(mu, 6.7e6, 4.2e7, 0.5);
    for (const away of [-1e-3, 1e-3])
      expect(
        planeChangingTransfer(mu, 6.7e6, 4.2e7, 0.5, best.firstAngle_rad + away).deltaV_m_s,
      ).toBeGreaterThan(best.deltaV_m_s);
  });
});

test('speeds: on a circle, at an apsis, of a parabola', () => {
  expect(speedAtApsis(mu, 7e6, 7e6)).toBeCloseTo(circularSpeed(mu, 7e6), 9);
  expect(speedAtApsis(mu, 7e6, Number.POSITIVE_INFINITY)).toBeCloseTo(Math.SQRT2 * circularSpeed(mu, 7e6), 9);
});

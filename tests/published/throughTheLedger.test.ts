import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { simulateCurtisGravityTurn } from './simulated/curtisGravityTurn.ts';
import { simulateLunarLinearTangent } from './simulated/lunarLinearTangent.ts';
import { csvOf, type SimulatedFlight } from './simulated/simulatedFlight.ts';
import { simulateVerticalRocket } from './simulated/verticalRocket.ts';

/** Textbook flights, simulated, written as a log of six channels and read back through the whole engine. */
async function ledgerOf(flight: SimulatedFlight) {
  const { review } = await reviewFlight({
    log: { name: 'flight.csv', bytes: new TextEncoder().encode(csvOf(flight.log)) },
    card: { name: 'flight.mission.json', text: flight.card },
  });
  const { ideal, steering, drag, gravity, speedGained, unexplained } = review.ledger.ground;
  return { ideal, steering, drag, gravity, speedGained, unexplained, review };
}

describe('gravity turn, Curtis, Orbital Mechanics for Engineering Students, example 11.3 (n = 15)', () => {
  test('drag 298.1 and gravity 1441.3 m/s within 0.2 %, steering 0', async () => {
    const books = await ledgerOf(simulateCurtisGravityTurn());
    // Printed (from memory): drag loss 0.298199, gravity loss 1.44096 km/s, speed 8.62139 km/s.
    expect(Math.abs(books.drag.value! / 298.199 - 1)).toBeLessThan(0.002);
    expect(Math.abs(books.drag.value! / 298.121 - 1)).toBeLessThan(0.002);
    expect(Math.abs(books.gravity.value! / 1441.262 - 1)).toBeLessThan(0.002);
    expect(Math.abs(books.speedGained.value! / 8621.35 - 1)).toBeLessThan(0.0002);
    expect(Math.abs(books.ideal.value! - 10360.729)).toBeLessThan(0.05);
    // Thrust along the path; what is left is the logged samples' own size. Measured: 0.01 m/s.
    expect(Math.abs(books.steering.value!)).toBeLessThan(0.1);
    expect(Math.abs(books.unexplained.value!)).toBeLessThan(0.3);
  });
});

describe('vertical rocket in closed form (Isp 300 s, thrust-to-weight 2, mass ratio 4)', () => {
  test('ideal c·ln n, gravity g·t_b, no steering, no drag', async () => {
    const books = await ledgerOf(simulateVerticalRocket());
    expect(Math.abs(books.ideal.value! - 4078.4711)).toBeLessThan(0.01);
    // g·t_b = 1103.2481 m/s with constant g; the card's sphere is large enough for 0.05 m/s.
    expect(Math.abs(books.gravity.value! - 1103.2481)).toBeLessThan(0.1);
    expect(Math.abs(books.speedGained.value! - 2975.223)).toBeLessThan(0.02);
    expect(Math.abs(books.steering.value!)).toBeLessThan(0.02);
    expect(books.drag.value).toBe(0);
  });
});

describe('lunar ascent by linear tangent steering, Longuski, Guzmán & Prussing §4.6', () => {
  test('ideal 2336.24, gravity 464.88, steering 244.36 m/s', async () => {
    const books = await ledgerOf(simulateLunarLinearTangent());
    expect(Math.abs(books.ideal.value! - 2336.2422)).toBeLessThan(0.05);
    expect(Math.abs(books.gravity.value! - 464.8844)).toBeLessThan(0.3);
    expect(Math.abs(books.steering.value! - 244.3579)).toBeLessThan(0.3);
    expect(Math.abs(books.speedGained.value! - 1627)).toBeLessThan(0.05);
  });
});

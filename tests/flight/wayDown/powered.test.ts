import { expect, test } from 'vitest';
import { poweredLanding } from '../../../src/flight/wayDown/powered.ts';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import { flightOf } from '../../wayDownFlights.ts';

const g = 9.8;
const isp_s = 300;

/**
 * A hop over an even field of no air, by closed forms: up on thrust for 10 s, free flight, then straight down on
 * thrust from a height at which an even deceleration ends at 20 m, four seconds of hovering, and 2 m/s to the ground.
 */
function hop() {
  const rows: string[] = ['time_s,altitude_m,speed_m_s,vertical_speed_m_s,mass_kg,throttle,pitch_deg'];
  let mass = 1000;
  let h = 0;
  let v = 0;
  let t = 0;
  const dt = 0.1;
  const push = (a: number | null): void => {
    // Thrust acceleration is what is flown plus gravity; null = engine off.
    const thrust = a === null ? 0 : a + g;
    const lit = a === null ? 0 : 1;
    rows.push(
      [t.toFixed(1), h.toFixed(4), Math.abs(v).toFixed(4), v.toFixed(4), mass.toFixed(4), lit, 90].join(','),
    );
    const acceleration = a ?? -g;
    h += v * dt + (acceleration * dt * dt) / 2;
    v += acceleration * dt;
    mass *= Math.exp((-thrust * dt) / (9.80665 * isp_s));
    t += dt;
  };
  while (t < 9.95) push(10);
  while (v > -60) push(null);
  const start = { t, h, v };
  const brake = (v * v) / (2 * (h - 20));
  while (v < -0.05) push(brake);
  const hover = t;
  v = 0;
  // A speed that never stirs would be read as a stuck display.
  for (let k = 0; k < 40; k++) push(k % 2 ? -0.2 : 0.2);
  const sink = t;
  v = -2;
  for (let k = 0; h > 0.2; k++) push(k % 2 ? -0.2 : 0.2);
  const touch = t;
  [h, v] = [0, 0];
  for (let k = 0; k < 60; k++) push(null);
  // Standing: the free fall of `push` must not count.
  const standing = rows.map((row, k) => {
    const cells = row.split(',');
    if (k === 0 || Number(cells[0]) < touch - 0.01) return row;
    return [cells[0], '0', '0', '0', mass.toFixed(4), '0', '90'].join(',');
  });
  return { text: standing.join('\n'), start, brake, hover, sink, touch };
}

const card = JSON.stringify({
  world: {
    name: 'flat',
    surfaceGravity_m_s2: g,
    radius_m: 60_000_000,
    rotationPeriod_s: 1e9,
    orbitFloor_m: 1000,
    atmosphere: null,
  },
  target: { kind: 'suborbital', peakAltitude_m: 900 },
  vehicle: {
    stages: [
      {
        name: 'hopper',
        thrustVacuum_N: 30_000,
        ispVacuum_s: isp_s,
        exitArea_m2: 0,
        dryMass_kg: 500,
        propellantMass_kg: 500,
      },
    ],
  },
});

test('the landing burn, its gravity loss and its hovering', async () => {
  const flown = hop();
  const flight = await flightOf(flown.text, card);
  const landing = poweredLanding(flight, flown.touch)!;
  expect(Math.abs(landing.burn.start_s - flown.start.t)).toBeLessThan(0.3);
  expect(Math.abs(landing.startSpeed_m_s - 60)).toBeLessThan(4);
  // Straight down gravity puts back g for every second of the burn.
  const truth = g * (flown.touch - flown.start.t);
  expect(Math.abs(landing.gravityLoss_m_s / truth - 1)).toBeLessThan(0.03);
  // Four seconds still, and the last of the braking and the slow sinking, which are under 3 m/s too.
  expect(landing.hover_s).toBeGreaterThan(13);
  expect(landing.hover_s).toBeLessThan(16);
  expect(landing.hoverLoss_m_s).toBeCloseTo(g * landing.hover_s, 0);
});

test('is told in the review, hovering as a finding', async () => {
  const flown = hop();
  const { review } = await reviewFlight({
    log: { name: 'hop.csv', bytes: new TextEncoder().encode(flown.text) },
    card: { name: 'card', text: card },
  });
  expect(review.return.code).toBe('landed');
  expect(review.return.poweredLanding!.deltaV_m_s.value!).toBeGreaterThan(60);
  expect(review.findings.map((f) => f.code)).toContain('landing-hover');
  expect(review.return.entry).toBeNull();
  expect(review.return.parachute).toBeNull();
});

import { describe, expect, test } from 'vitest';
import { FlightState } from '../../src/refly/flightState.ts';
import { steered, withinAngleOfAttack } from '../../src/refly/steering.ts';
import { airTo, worldOf } from './rockets.ts';

const steering = { attack_rad: 0, tangent: 1, fall_per_s: 0.01, reference_s: 100 };

function state(more: Partial<FlightState>): FlightState {
  return Object.assign(new FlightState(), more);
}

describe('steered', () => {
  test('tan θ = a − b·(t − reference) without air', () => {
    const { at } = steered(worldOf(0), steering);
    expect(at(state({ time_s: 100 }))).toBeCloseTo(Math.PI / 4, 12);
    expect(at(state({ time_s: 200 }))).toBeCloseTo(0, 12);
  });

  test('the path in dense air, the tangent law in space, between them a passage without a jump', () => {
    const { at } = steered(worldOf(0, airTo(120000)), steering);
    const path = 0.2;
    const pitch = (density_kg_m3: number) =>
      at(state({ time_s: 100, flightPathAngle_rad: path, density_kg_m3 }));
    expect(pitch(1)).toBe(path);
    expect(pitch(0)).toBeCloseTo(Math.PI / 4, 12);
    let before = path;
    for (let k = 0; k <= 200; k++) {
      const now = pitch(1e-2 * Math.exp(-0.1 * k));
      expect(now).toBeGreaterThanOrEqual(before - 1e-12);
      expect(now - before).toBeLessThan(0.1);
      before = now;
    }
    expect(before).toBeCloseTo(Math.PI / 4, 6);
  });
});

describe('withinAngleOfAttack', () => {
  const pitch = { at: () => 1 };
  test('holds the limit in dense air and eases it as the pressure falls', () => {
    const { at } = withinAngleOfAttack(pitch, 0.1);
    const away = (dynamicPressure_Pa: number) =>
      at(state({ flightPathAngle_rad: 0.2, dynamicPressure_Pa })) - 0.2;
    expect(away(30000)).toBeCloseTo(0.1, 12);
    expect(away(2000)).toBeCloseTo(0.1, 12);
    expect(away(1000)).toBeCloseTo(0.2, 12);
    expect(away(0)).toBeCloseTo(0.8, 12);
  });

  test('below the path as well', () => {
    const { at } = withinAngleOfAttack({ at: () => -1 }, 0.1);
    expect(at(state({ flightPathAngle_rad: 0.2, dynamicPressure_Pa: 5000 }))).toBeCloseTo(0.1, 12);
  });

  test('without a limit the program stays itself', () => {
    expect(withinAngleOfAttack(pitch, null)).toBe(pitch);
  });
});

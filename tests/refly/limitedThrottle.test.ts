import { describe, expect, test } from 'vitest';
import { FlightState } from '../../src/refly/flightState.ts';
import { limitedThrottle } from '../../src/refly/limitedThrottle.ts';
import { rocketWith, stageOf } from './rockets.ts';

const none = { dynamicPressure_Pa: null, acceleration_m_s2: null, angleOfAttackInAir_rad: null };
const rocket = rocketWith([stageOf({ thrustVacuum_N: 100000, exitArea_m2: 0.1 })]);

function state(more: Partial<FlightState>): FlightState {
  return Object.assign(new FlightState(), more);
}

describe('limitedThrottle', () => {
  test('is full without limits, whatever the engine could', () => {
    expect(limitedThrottle(rocket, [0.3], none).at(state({ mass_kg: 1, dynamicPressure_Pa: 1e6 }))).toBe(1);
  });

  test('keeps thrust over mass to the limit, the air’s back pressure counted', () => {
    const { at } = limitedThrottle(rocket, [0.1], { ...none, acceleration_m_s2: 20 });
    const light = state({ mass_kg: 2000, pressure_Pa: 10000 });
    // (T·throttle − p·Ae)/m = 20
    expect((100000 * at(light) - 1000) / 2000).toBeCloseTo(20, 9);
    expect(at(state({ mass_kg: 9000 }))).toBe(1);
  });

  test('leaves to the core what boosters do not give', () => {
    const group = {
      name: 'strap-on',
      dryMass_kg: 0,
      propellantMass_kg: 1000,
      thrustVacuum_N: 60000,
      ispVacuum_s: 300,
      exitArea_m2: 0,
      ignitionTime_s: 0,
      separationTime_s: null,
    };
    const both = rocketWith([stageOf({ thrustVacuum_N: 100000, exitArea_m2: 0, boosters: [group] })]);
    const { at } = limitedThrottle(both, [0.1], { ...none, acceleration_m_s2: 20 });
    expect(at(state({ mass_kg: 5000, time_s: 10 }))).toBeCloseTo(0.4, 9);
    // 1000 kg last 49 s; after them the core is free.
    expect(at(state({ mass_kg: 5000, time_s: 60 }))).toBe(1);
  });

  test('closes to its least just under the pressure limit', () => {
    const { at } = limitedThrottle(rocket, [0.4], { ...none, dynamicPressure_Pa: 20000 });
    expect(at(state({ dynamicPressure_Pa: 18000 }))).toBe(1);
    expect(at(state({ dynamicPressure_Pa: 20000 }))).toBe(0.4);
    const half = at(state({ dynamicPressure_Pa: 19400 }));
    expect(half).toBeGreaterThan(0.4);
    expect(half).toBeLessThan(1);
  });

  test('an engine that cannot throttle does not', () => {
    const { at } = limitedThrottle(rocket, [1], { ...none, acceleration_m_s2: 1, dynamicPressure_Pa: 1 });
    expect(at(state({ mass_kg: 100, dynamicPressure_Pa: 100 }))).toBe(1);
  });
});

import { describe, expect, test } from 'vitest';
import type { Target } from '../../src/mission/types.ts';
import { Ascent } from '../../src/refly/ascent.ts';
import type { AscentFrame, AscentShape } from '../../src/refly/ascentShape.ts';
import { ascentProgram, targetSpeed_m_s } from '../../src/refly/ascentShape.ts';
import { held } from '../../src/refly/controls.ts';
import { targetEnergy_J_kg } from '../../src/refly/targetEnergy.ts';
import { airTo, padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

const orbit: Target = {
  kind: 'orbit',
  apoapsisAltitude_m: 400000,
  periapsisAltitude_m: 200000,
  tolerance_m: 1000,
  inclination_rad: null,
  argumentOfPeriapsis_rad: null,
  ascendingNode_rad: null,
};
const world = worldOf(0, airTo(60000));

function frame(target: Target, stages: number): AscentFrame {
  return {
    world,
    start: padStart(),
    heading_rad: Math.PI / 2,
    stages,
    reference_s: 100,
    throttle: held(1),
    angleOfAttackLimit_rad: null,
    target,
  };
}

const shape: AscentShape = {
  rise_s: 8,
  kick_rad: 0.05,
  tangent: 0.6,
  attack_rad: 0,
  fall_per_s: 0.003,
  coast_s: 12,
  ending: { kind: 'direct' },
};

const rocket = rocketWith([
  stageOf({ name: 'one', propellantMass_kg: 20000, thrustVacuum_N: 500000 }),
  stageOf({ name: 'two', propellantMass_kg: 9000, dryMass_kg: 300 }),
]);

describe('energy and speed of a target orbit', () => {
  test('agree by vis viva at both apsides', () => {
    const energy = targetEnergy_J_kg(world, orbit)!;
    for (const altitude of [200000, 400000]) {
      const speed = targetSpeed_m_s(world, orbit, altitude);
      expect(speed ** 2 / 2 - world.mu_m3_s2 / (world.radius_m + altitude)).toBeCloseTo(energy, 3);
    }
  });

  test('of an escape and of a peak', () => {
    expect(targetEnergy_J_kg(world, { kind: 'escape', c3_m2_s2: 5e5 })).toBe(250000);
    expect(targetEnergy_J_kg(world, { kind: 'suborbital', peakAltitude_m: 1e5, tolerance_m: 1 })).toBeNull();
  });
});

describe('ascentProgram', () => {
  test('rises, kicks, stages after its coast and stops at the energy of the target', () => {
    const ascent = new Ascent(world, rocket, { carryLosses: false });
    const result = ascent.fly(ascentProgram(frame(orbit, 2), shape));
    expect(result.end).toBe('flown');
    const at = (name: string, k = 0) => result.events.filter((e) => e.name === name)[k]!.time_s;
    expect(at('separation') - at('cutoff')).toBeCloseTo(1, 9);
    expect(at('ignition', 1) - at('cutoff')).toBeCloseTo(12, 9);
    const s = ascent.observe(result.time_s, result.state);
    const energy = s.inertialSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / s.radius_m;
    expect(Math.abs(energy - targetEnergy_J_kg(world, orbit)!)).toBeLessThan(1);
  });

  test('a transfer leaves the speed missing that it is told to, and coasts to its apoapsis', () => {
    const ascent = new Ascent(world, rocket, { carryLosses: false });
    const ending = { kind: 'transfer', missing_m_s: 150 } as const;
    const result = ascent.fly(ascentProgram(frame(orbit, 2), { ...shape, ending }));
    const s = ascent.observe(result.time_s, result.state);
    expect(Math.abs(s.verticalSpeed_m_s)).toBeLessThan(1e-3);
    const energy = s.inertialSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / s.radius_m;
    const speed = targetSpeed_m_s(world, orbit, 400000) - 150;
    // The coast lies above the air.
    expect(Math.abs(energy - (speed ** 2 / 2 - world.mu_m3_s2 / (world.radius_m + 400000)))).toBeLessThan(5);
  });

  test('to a peak altitude it goes straight up', () => {
    const ascent = new Ascent(world, rocket, { carryLosses: false });
    const peak: Target = { kind: 'suborbital', peakAltitude_m: 150000, tolerance_m: 1000 };
    const result = ascent.fly(ascentProgram(frame(peak, 2), shape));
    const s = ascent.observe(result.time_s, result.state);
    expect(s.horizontalSpeed_m_s).toBeLessThan(1e-6);
    const top = 1 / (1 / s.radius_m - s.speed_m_s ** 2 / (2 * world.mu_m3_s2)) - world.radius_m;
    // Reached already while the first stage burns: the second is lit for no time, so the peak is passed.
    expect(top).toBeGreaterThan(150000 - 1);
  });
});

import { describe, expect, test } from 'vitest';
import type { AscentShape } from '../../src/refly/ascentShape.ts';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { TrialFlights } from '../../src/refly/trialFlights.ts';
import { missionOf } from './missions.ts';

const starts = [{ rise_s: 8, kick_deg: 3, pitch_deg: 25 }];

function trialsOf(payload_kg: number, lessPropellant_kg = 0) {
  const mission = missionOf('osselby-short', (card) => {
    card.vehicle.payload_kg = payload_kg;
    card.vehicle.stages[1]!.propellantMass_kg = 8500 - lessPropellant_kg;
  });
  return new TrialFlights(mission, rocketOf(mission.vehicle!).rocket!, 1e-10);
}

describe('TrialFlights', () => {
  const found = bestAscent(missionOf('osselby-short'), { starts });
  const shape = (found.kind === 'found' ? found.shape : null) as AscentShape;

  test('what is left agrees with the books of the card', () => {
    // Measured: 1e-4 m/s.
    expect(
      Math.abs(trialsOf(6200).fly(shape)!.margin_m_s - (found.kind === 'found' ? found.margin_m_s : 0)),
    ).toBeLessThan(1e-3);
  });

  test('goes on through nothing left as the rocket equation does', () => {
    // Propellant turned into payload leaves the path as it is.
    const left = (turned_kg: number) => trialsOf(6200 + turned_kg, turned_kg).fly(shape)!.left_m_s;
    const whole = left(0);
    const burnt_kg = 6200 + 1500;
    for (const turned_kg of [100, 180, 200, 400, 1000]) {
      const wanted = whole - 9.80665 * 335 * Math.log((burnt_kg + turned_kg) / burnt_kg);
      // Measured: 3e-12 m/s.
      expect(Math.abs(left(turned_kg) - wanted)).toBeLessThan(1e-9);
    }
    expect(left(1000)).toBeLessThan(-300);
  });

  test('a shape that comes down has no outcome', () => {
    expect(trialsOf(6200).fly({ ...shape, kick_rad: 0.6 })).toBeNull();
  });
});

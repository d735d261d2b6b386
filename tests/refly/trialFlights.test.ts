import { describe, expect, test } from 'vitest';
import type { AscentShape } from '../../src/refly/ascentShape.ts';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { TrialFlights } from '../../src/refly/trialFlights.ts';
import { missionOf } from './missions.ts';

const starts = [{ rise_s: 8, kick_deg: 3, pitch_deg: 25 }];

function trialsOf(payload_kg: number) {
  const mission = missionOf('osselby-short', (card) => {
    card.vehicle.payload_kg = payload_kg;
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

  test('goes on smoothly below nothing left', () => {
    const left = [6580, 6600, 6620, 6640, 6660, 6680].map((kg) => trialsOf(kg).fly(shape)!.left_m_s);
    expect(left[0]).toBeGreaterThan(0);
    expect(left.at(-1)).toBeLessThan(0);
    const steps = left.slice(1).map((v, i) => v - left[i]!);
    // 20 kg cost about as much as the 20 kg before, also across zero. Measured: 1.3 % more.
    for (let i = 1; i < steps.length; i++) expect(Math.abs(steps[i]! / steps[i - 1]! - 1)).toBeLessThan(0.03);
  });

  test('a shape that comes down has no outcome', () => {
    expect(trialsOf(6200).fly({ ...shape, kick_rad: 0.6 })).toBeNull();
  });
});

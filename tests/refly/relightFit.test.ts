import { describe, expect, test } from 'vitest';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import { fitRelight } from '../../src/refly/relightFit.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { TrialFlights } from '../../src/refly/trialFlights.ts';
import { missionOf } from './missions.ts';

describe('fitRelight', () => {
  const mission = missionOf('osselby-nominal');
  const found = bestAscent(mission, { relight: true, starts: [{ rise_s: 8, kick_deg: 5, pitch_deg: 25 }] });
  if (found.kind !== 'found' || found.shape.ending.kind !== 'relight') throw new Error('no second burn');
  const trials = new TrialFlights(mission, rocketOf(mission.vehicle!).rocket!);

  test('the second burn ends in the circular target, however much speed the first guess leaves missing', () => {
    const { missing_m_s } = found.shape.ending as { missing_m_s: number };
    for (const off of [-3, 0, 3]) {
      const shape = fitRelight(trials, {
        ...found.shape,
        ending: { kind: 'transfer', missing_m_s: missing_m_s + off },
      })!;
      const end = trials.fly(shape)!;
      expect(Math.abs(end.radius_m - mission.world.radius_m - 160000)).toBeLessThan(1);
      expect(Math.abs(end.verticalSpeed_m_s)).toBeLessThan(1e-3);
    }
  });

  test('nothing to fit for one burn', () => {
    expect(fitRelight(trials, { ...found.shape, ending: { kind: 'direct' } })).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import { AscentProblem } from '../../src/refly/ascentProblem.ts';
import { flyableStart } from '../../src/refly/ascentStarts.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { TrialFlights } from '../../src/refly/trialFlights.ts';
import { missionOf } from './missions.ts';

function problemOf(name: string) {
  const mission = missionOf(name);
  const trials = new TrialFlights(mission, rocketOf(mission.vehicle!).rocket!);
  return { trials, problem: new AscentProblem(trials, { kind: 'direct' }) };
}

describe('flyableStart', () => {
  test('takes a kick smaller that would bring the rocket down', () => {
    const { trials, problem } = problemOf('osselby-short');
    const hard = { rise_s: 8, kick_deg: 40, pitch_deg: 20 };
    const x = flyableStart(problem, trials, hard)!;
    expect(problem.evaluate(x, new Float64Array(problem.constraints))).not.toBeNaN();
    expect(problem.shapeOf(x).kick_rad).toBeLessThan((20 * Math.PI) / 180);
  });

  test('gives up on a rocket that cannot leave the pad', () => {
    const mission = missionOf('osselby-short', (card) => {
      card.vehicle.payload_kg = 100000;
    });
    const trials = new TrialFlights(mission, rocketOf(mission.vehicle!).rocket!);
    const problem = new AscentProblem(trials, { kind: 'direct' });
    expect(flyableStart(problem, trials, { rise_s: 8, kick_deg: 5, pitch_deg: 20 })).toBeNull();
  });
});

describe('AscentProblem', () => {
  test('coordinates and shapes turn into each other', () => {
    const { problem } = problemOf('osselby-nominal');
    const shape = {
      rise_s: 7,
      kick_rad: 0.06,
      tangent: 0.4,
      attack_rad: 0,
      fall_per_s: 0.002,
      coast_s: 20,
      ending: { kind: 'direct' as const },
    };
    const back = problem.shapeOf(problem.coordinatesOf(shape));
    expect(back.kick_rad).toBeCloseTo(0.06, 12);
    expect({ ...back, kick_rad: 0.06 }).toEqual(shape);
  });

  test('varies what there is to vary', () => {
    // Rise, kick, angle of attack, tangent, fall, coast.
    expect(problemOf('osselby-nominal').problem.size).toBe(6);
    // Neither air nor a second stage.
    expect(problemOf('thimble-teasel-1').problem.size).toBe(3);
    // A limit of dynamic pressure adds a slack and a condition.
    const fairlead = problemOf('fairlead-tansy-1').problem;
    expect([fairlead.size, fairlead.constraints]).toEqual([7, 3]);
  });
});

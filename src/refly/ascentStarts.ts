import type { AscentProblem } from './ascentProblem.ts';
import { STAGING_S } from './ascentShape.ts';
import type { TrialFlights } from './trialFlights.ts';

const DEGREE = Math.PI / 180;

/** A first guess of an ascent, in the terms of a pilot. */
export interface AscentStart {
  readonly rise_s: number;
  readonly kick_deg: number;
  /** Pitch once the air is thin; it falls to the horizon by the end of the last burn. */
  readonly pitch_deg: number;
}

/** Where a search begins when nothing else is asked for. */
export const usualStarts: readonly AscentStart[] = [
  { rise_s: 8, kick_deg: 5, pitch_deg: 25 },
  { rise_s: 8, kick_deg: 2, pitch_deg: 40 },
  { rise_s: 6, kick_deg: 12, pitch_deg: 15 },
  { rise_s: 12, kick_deg: 8, pitch_deg: 30 },
];

/** Kicks are tried each so much smaller than the one before, down to the least of the search. */
const SMALLER = 0.6;
const LEAST_KICK_DEG = 0.4;

/** Angles of attack in dense air that are begun with besides none, rad. */
const ATTACKS_RAD = [4 * DEGREE, 12 * DEGREE];

/** Those that a mission's limit allows; none where there is no air. */
export function attacksToTry({ frame }: TrialFlights): number[] {
  const most =
    frame.world.atmosphere === null ? 0 : (frame.angleOfAttackLimit_rad ?? Number.POSITIVE_INFINITY);
  return [...new Set(ATTACKS_RAD.map((attack_rad) => Math.min(attack_rad, most)))].filter((a) => a > 0);
}

/**
 * Coordinates of the flyable ascent nearest to a start: the best of its kick and smaller ones; where they all come
 * down, with a longer rise or a steeper pitch. Null where nothing helps.
 * @param attack_rad angle of attack held in dense air; the kick is larger by as much, or the path would not turn
 */
export function flyableStart(
  problem: AscentProblem,
  trials: TrialFlights,
  start: AscentStart,
  attack_rad = 0,
): Float64Array | null {
  for (const steeper of [0, 15, 30, 45])
    for (const longer of [1, 1.5, 2.2]) {
      const best = bestKick(
        problem,
        trials,
        {
          rise_s: longer * start.rise_s,
          kick_deg: start.kick_deg,
          pitch_deg: Math.min(80, start.pitch_deg + steeper),
        },
        attack_rad,
      );
      if (best !== null) return best;
    }
  return null;
}

function bestKick(
  problem: AscentProblem,
  trials: TrialFlights,
  start: AscentStart,
  attack_rad: number,
): Float64Array | null {
  const c = new Float64Array(problem.constraints);
  const tangent = Math.tan(start.pitch_deg * DEGREE);
  const airless = trials.frame.world.atmosphere === null;
  let best: Float64Array | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let kick_deg = start.kick_deg; kick_deg > LEAST_KICK_DEG; kick_deg *= SMALLER) {
    const x = problem.coordinatesOf({
      rise_s: start.rise_s,
      kick_rad: kick_deg * DEGREE + attack_rad,
      attack_rad,
      tangent,
      fall_per_s: tangent / trials.steeredBurn_s,
      coast_s: STAGING_S,
      ending: { kind: 'direct' },
    });
    const merit = problem.evaluate(x, c) + c.reduce((sum, v) => sum + Math.abs(v), 0);
    if (merit < least) {
      least = merit;
      best = x;
    }
    if (airless) break;
  }
  return best;
}

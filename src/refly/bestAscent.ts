import type { Mission } from '../mission/types.ts';
import { AscentProblem, CLEAR_M } from './ascentProblem.ts';
import { type AscentShape, targetSpeed_m_s } from './ascentShape.ts';
import type { AscentStart } from './ascentStarts.ts';
import { attacksToTry, flyableStart, usualStarts } from './ascentStarts.ts';
import { constrainedMinimum } from './constrainedMinimum.ts';
import type { FlownAscent } from './flownAscent.ts';
import { flyAscent } from './flownAscent.ts';
import { fitRelight } from './relightFit.ts';
import type { Rocket } from './rocket.ts';
import { rocketOf } from './rocketOf.ts';
import { TrialFlights } from './trialFlights.ts';

/** How far a search has come. */
export interface SearchProgress {
  /** From 0 to 1. */
  readonly done: number;
  /** Best margin so far, m/s; null before the first. */
  readonly margin_m_s: number | null;
}

export interface SearchOptions {
  /** First guesses, each searched from; default four. */
  readonly starts?: readonly AscentStart[];
  /** Second burn of the last stage: as the card's `ignitions` allows (default), or by this. */
  readonly relight?: boolean;
  /** Told after each part of the search. */
  readonly onProgress?: (progress: SearchProgress) => void;
  /** Looked at before each round; `aborted` ends the search. An AbortSignal serves. */
  readonly signal?: { readonly aborted: boolean };
}

/** The best ascent found for a mission. */
export interface BestAscent extends FlownAscent {
  readonly kind: 'found';
  readonly shape: AscentShape;
  /**
   * Vacuum delta-v left at insertion, m/s (METHODS §5). Below zero the rocket cannot reach the target: so much was
   * missing, and the flight taken down is the one that comes nearest.
   */
  readonly margin_m_s: number;
  readonly reachesTarget: boolean;
  readonly relit: boolean;
  /** Flights flown to find it. */
  readonly trials: number;
  /** One sentence for each thing taken because the card does not say, and each limit that could not be kept. */
  readonly assumed: readonly string[];
}

export type BestAscentResult =
  | BestAscent
  | { readonly kind: 'unavailable'; readonly reason: string }
  | { readonly kind: 'stopped' };

/** Relative tolerance of the flight that is taken down. */
const FINE_TOLERANCE = 1e-10;
/** Slopes of the search: half-width of the differences, least gain worth a round (0.02 m/s), misses taken as met. */
const SEARCH = { difference: 1e-4, gain: 2e-4, met: 1e-4, rounds: 50 } as const;
/** From how many starts a second burn is searched. */
const RELIGHT_STARTS = 2;
/** A new beginning from where a search ended has to gain this much, in its unit (0.1 m/s), to be followed by another. */
const WORTH = 1e-3;
const AGAIN = 4;
/** A shape with larger misses than these (in units of the search) has not been found. */
const LOOSE = 2e-3;

interface Found {
  readonly shape: AscentShape;
  readonly margin_m_s: number;
}

/**
 * Searches the ascent that leaves most delta-v at insertion into the card's target, within its limits (METHODS §7):
 * rise, kick, gravity turn or an angle of attack held in dense air, tan θ = a − b·t in thin air, coast before the last stage, and a second burn of it where
 * its ignitions allow. Thrust keeps the launch azimuth; the target's node and argument of periapsis are left free.
 * Deterministic: the same mission gives the same ascent.
 */
export function bestAscent(mission: Mission, options: SearchOptions = {}): BestAscentResult {
  const search = ascentSearch(mission, options);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
    options.onProgress?.(value);
  }
}

/** The same, step by step, for a caller that has other things to do between the steps. */
export function* ascentSearch(
  mission: Mission,
  options: SearchOptions = {},
): Generator<SearchProgress, BestAscentResult, void> {
  const { target, vehicle } = mission;
  if (target.kind === 'landing') return unavailable('the mission has no orbit or height to climb to');
  if (vehicle === null) return unavailable('the card has no vehicle');
  const { rocket, missing, assumed } = rocketOf(vehicle);
  if (rocket === null) return unavailable(`the card lacks ${missing.join(', ')}`);
  const ignitions = vehicle.stages.at(-1)?.ignitions ?? 1;
  const relight = target.kind === 'orbit' && (options.relight ?? ignitions > 1);
  const starts = options.starts ?? usualStarts;
  const trials = new TrialFlights(mission, rocket);
  const stop = () => options.signal?.aborted === true;

  const direct = new AscentProblem(trials, { kind: 'direct' });
  const relightParts = relight ? Math.min(starts.length, RELIGHT_STARTS) : 0;
  const attacks = attacksToTry(trials);
  const parts = starts.length + attacks.length + relightParts + 1;
  let finished = 0;
  const found: Found[] = [];
  const progress = (): SearchProgress => ({
    done: ++finished / parts,
    margin_m_s: found.length === 0 ? null : Math.max(...found.map((f) => f.margin_m_s)),
  });
  const beginnings = [
    ...starts.map((start) => ({ start, attack_rad: 0 })),
    ...attacks.map((attack_rad) => ({ start: starts[0] ?? usualStarts[0]!, attack_rad })),
  ];
  for (const { start, attack_rad } of beginnings) {
    const x = flyableStart(direct, trials, start, attack_rad);
    const shape = x === null ? null : settle(direct, x, stop);
    if (shape !== null) found.push(shape);
    if (stop()) return { kind: 'stopped' };
    yield progress();
  }
  if (relight) {
    const low = lowInsertion(mission);
    const lowTrials = new TrialFlights(low, rocket);
    const lowDirect = new AscentProblem(lowTrials, { kind: 'direct' });
    const transfer = new AscentProblem(trials, { kind: 'transfer', missing_m_s: 0 });
    const missing_m_s = missingAtApoapsis_m_s(mission, low);
    const directs = found.toSorted((a, b) => b.margin_m_s - a.margin_m_s);
    for (let i = 0; i < relightParts; i++) {
      const seeds = [flyableStart(lowDirect, lowTrials, starts[i]!)];
      if (directs[i] !== undefined) seeds.push(lowDirect.coordinatesOf(directs[i]!.shape));
      const lows = seeds.flatMap((x) => (x === null ? [] : (settle(lowDirect, x, stop) ?? [])));
      let flown: Found | null = null;
      // The best insertion is not always one from which the transfer is found.
      for (const { shape } of lows.toSorted((a, b) => b.margin_m_s - a.margin_m_s))
        flown ??= relit(trials, transfer, { ...shape, ending: { kind: 'transfer', missing_m_s } }, stop);
      if (flown !== null) found.push(flown);
      if (stop()) return { kind: 'stopped' };
      yield progress();
    }
    trials.count += lowTrials.count;
  }
  const first = best(found);
  if (first === null)
    return unavailable(
      relight || target.kind !== 'orbit'
        ? 'no ascent of this rocket was found that comes near the target'
        : 'no ascent with one burn of the last stage was found that comes near the target; with more ignitions in the card a second burn is tried',
    );
  const shape = mended(mission, rocket, first.shape);
  const flown = flyAscent(mission, rocket, shape, FINE_TOLERANCE);
  const reachesTarget = first.margin_m_s >= 0;
  return {
    kind: 'found',
    ...flown,
    shape,
    margin_m_s: reachesTarget ? (flown.obtainable_m_s ?? first.margin_m_s) : first.margin_m_s,
    reachesTarget,
    relit: first.shape.ending.kind === 'relight',
    trials: trials.count,
    assumed: [...assumed, ...limitsBroken(mission, flown), ...offItsPath(mission, shape)],
  };
}

function best(found: readonly (Found | null)[]): Found | null {
  let most: Found | null = null;
  for (const f of found) if (f !== null && (most === null || f.margin_m_s > most.margin_m_s)) most = f;
  return most;
}

function unavailable(reason: string): BestAscentResult {
  return { kind: 'unavailable', reason };
}

/** Searches from a start, anew from where it ended for as long as that gains something. */
function settle(problem: AscentProblem, start: Float64Array, stop: () => boolean): Found | null {
  let end = constrainedMinimum(problem, start, { ...SEARCH, stop });
  for (let again = 0; again < AGAIN && Number.isFinite(end.value) && !stop(); again++) {
    const next = constrainedMinimum(problem, end.x, { ...SEARCH, stop });
    const worth = end.value - next.value > WORTH || next.miss < 0.1 * end.miss;
    if (next.miss < Math.max(end.miss, LOOSE)) end = next;
    if (!worth && end.miss < LOOSE) break;
  }
  if (!Number.isFinite(end.value) || !(end.miss < LOOSE)) return null;
  return { shape: problem.shapeOf(end.x), margin_m_s: AscentProblem.margin_m_s(end.value) };
}

/** The best transfer from a start, with its second burn flown. */
function relit(
  trials: TrialFlights,
  transfer: AscentProblem,
  from: AscentShape,
  stop: () => boolean,
): Found | null {
  const end = settle(transfer, transfer.coordinatesOf(from), stop);
  const shape = end === null ? null : fitRelight(trials, end.shape);
  const outcome = shape === null ? null : trials.fly(shape);
  return shape === null || outcome === null ? null : { shape, margin_m_s: outcome.margin_m_s };
}

/** A shape that meets its conditions to the last digits, by flights of the tolerance that is taken down. */
function mended(mission: Mission, rocket: Rocket, shape: AscentShape): AscentShape {
  const trials = new TrialFlights(mission, rocket, FINE_TOLERANCE);
  const { ending } = shape;
  if (ending.kind === 'relight')
    return fitRelight(trials, { ...shape, ending: { ...ending, kind: 'transfer' } }) ?? shape;
  const problem = new AscentProblem(trials, ending);
  const start = problem.coordinatesOf(shape);
  const end = constrainedMinimum(
    {
      size: problem.size,
      constraints: problem.constraints,
      lower: problem.lower,
      upper: problem.upper,
      evaluate: (x, c) => 0 * problem.evaluate(x, c),
    },
    start,
    { difference: SEARCH.difference, met: 1e-7, rounds: 8 },
  );
  return end.miss < SEARCH.met ? problem.shapeOf(end.x) : shape;
}

/** The same mission with the first burn to end in a low periapsis under the target's apoapsis. */
function lowInsertion(mission: Mission): Mission {
  const { target, world } = mission;
  if (target.kind !== 'orbit') return mission;
  const low_m = Math.min(target.periapsisAltitude_m, world.orbitFloor_m + 3 * CLEAR_M);
  return { ...mission, target: { ...target, periapsisAltitude_m: low_m } };
}

/** Speed that an orbit lacks at its apoapsis, which is also the target's. */
function missingAtApoapsis_m_s({ world, target }: Mission, low: Mission): number {
  if (target.kind !== 'orbit' || low.target.kind !== 'orbit') return 0;
  const { apoapsisAltitude_m } = target;
  return (
    targetSpeed_m_s(world, target, apoapsisAltitude_m) -
    targetSpeed_m_s(world, low.target, apoapsisAltitude_m)
  );
}

function limitsBroken(mission: Mission, { peaks }: FlownAscent): string[] {
  const { dynamicPressure_Pa, acceleration_m_s2 } = mission.limits;
  const said: string[] = [];
  if (dynamicPressure_Pa !== null && peaks.dynamicPressure_Pa > 1.005 * dynamicPressure_Pa)
    said.push(
      `The limit of dynamic pressure could not be kept: it reaches ${kilo(peaks.dynamicPressure_Pa)} kPa.`,
    );
  if (acceleration_m_s2 !== null && peaks.acceleration_m_s2 > 1.005 * acceleration_m_s2)
    said.push(
      `The limit of acceleration could not be kept: it reaches ${peaks.acceleration_m_s2.toFixed(1)} m/s².`,
    );
  return said;
}

/** Said where the nose is held off the path in dense air because nothing forbids it, rad. */
const OFF_PATH_RAD = Math.PI / 180;

function offItsPath({ limits }: Mission, { attack_rad }: AscentShape): string[] {
  if (limits.angleOfAttackInAir_rad !== null || attack_rad < OFF_PATH_RAD) return [];
  const held = ((attack_rad * 180) / Math.PI).toFixed(0);
  return [
    `The card limits no angle of attack: in dense air the nose is held ${held}° above the path. A vehicle that cannot bear that needs limits.angleOfAttackInAir_deg.`,
  ];
}

function kilo(value: number): string {
  return (value / 1000).toFixed(1);
}

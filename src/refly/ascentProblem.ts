import type { AscentShape, Ending } from './ascentShape.ts';
import { STAGING_S, targetSpeed_m_s } from './ascentShape.ts';
import type { ConstrainedProblem } from './constrainedMinimum.ts';
import type { TrialFlights } from './trialFlights.ts';

/** One unit of the search in each quantity. */
const MARGIN_UNIT_M_S = 100;
const HEIGHT_UNIT_M = 10_000;
const CLIMB_UNIT_M_S = 100;
/** Coasts keep this far above the orbit floor, where air that ends in a step would bend the search. */
export const CLEAR_M = 500;
const DEGREE = Math.PI / 180;
/** Angle of attack in dense air beyond which nothing is gained, where the card sets no limit. */
const MOST_ATTACK_RAD = 30 * DEGREE;

/** What a search varies. */
type Coordinate =
  | 'rise'
  | 'kick'
  | 'attack'
  | 'tangent'
  | 'fall'
  | 'coast'
  | 'missing'
  | 'clearance'
  | 'slack';

interface Range {
  readonly name: Coordinate;
  readonly unit: number;
  /** The coordinate is the logarithm of the quantity in its unit. */
  readonly log?: boolean;
  readonly lower: number;
  readonly upper: number;
}

/**
 * The search for the best ascent as a problem of a few scaled numbers: as much delta-v left as can be had. A
 * direct ascent to an orbit has two conditions, the radius of the target's periapsis and no climb (the burn itself
 * stops at the orbit's energy); a transfer has two, the radius at the end of its coast
 * and that the coast keeps clear of the orbit floor, with a slack. A limit of dynamic pressure that throttling cannot keep adds
 * one, with a slack.
 */
export class AscentProblem implements ConstrainedProblem {
  readonly size: number;
  readonly constraints: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  private readonly trials: TrialFlights;
  private readonly ending: Ending;
  private readonly ranges: readonly Range[];
  private readonly clearanceAt: number;
  /** Coasts keep above the orbit floor, or above a target that lies lower. */
  private readonly floor_m: number;

  constructor(trials: TrialFlights, ending: Ending) {
    this.trials = trials;
    this.ending = ending;
    this.ranges = rangesOf(trials, ending);
    this.size = this.ranges.length;
    this.clearanceAt = this.ranges.findIndex((r) => r.name === 'clearance');
    const { world, target } = trials.frame;
    const low_m = target.kind === 'orbit' ? target.periapsisAltitude_m : 0;
    this.floor_m = Math.min(world.orbitFloor_m + CLEAR_M, low_m);
    this.lower = Float64Array.from(this.ranges, (r) => coordinateOf(r, r.lower));
    this.upper = Float64Array.from(this.ranges, (r) => coordinateOf(r, r.upper));
    const orbit = trials.frame.target.kind === 'orbit';
    const ofOrbit = orbit ? 2 : 0;
    this.constraints = ofOrbit + (this.limited ? 1 : 0);
  }

  private get limited(): boolean {
    return this.ranges.at(-1)?.name === 'slack';
  }

  coordinatesOf(shape: AscentShape): Float64Array {
    const value: Record<Coordinate, number> = {
      rise: shape.rise_s,
      kick: shape.kick_rad,
      attack: shape.attack_rad,
      tangent: shape.tangent,
      fall: shape.fall_per_s,
      coast: shape.coast_s,
      missing: shape.ending.kind === 'direct' ? 0 : shape.ending.missing_m_s,
      clearance: 0,
      slack: 0,
    };
    return Float64Array.from(this.ranges, (r) => coordinateOf(r, value[r.name]));
  }

  shapeOf(x: Float64Array): AscentShape {
    const value: Partial<Record<Coordinate, number>> = {};
    this.ranges.forEach((r, i) => {
      value[r.name] = r.unit * (r.log ? Math.exp(x[i]!) : x[i]!);
    });
    return {
      rise_s: value.rise ?? 0,
      kick_rad: value.kick ?? 0,
      attack_rad: value.attack ?? 0,
      tangent: value.tangent ?? 0,
      fall_per_s: value.fall ?? 0,
      coast_s: value.coast ?? STAGING_S,
      ending: value.missing === undefined ? this.ending : { kind: 'transfer', missing_m_s: value.missing },
    };
  }

  /** Minus the margin, in its unit; NaN for a shape that does not come to its end. */
  readonly evaluate = (x: Float64Array, c: Float64Array): number => {
    const outcome = this.trials.fly(this.shapeOf(x));
    if (outcome === null) return Number.NaN;
    const { target, world } = this.trials.frame;
    let k = 0;
    if (target.kind === 'orbit') {
      const direct = this.ending.kind === 'direct';
      const altitude_m = direct ? target.periapsisAltitude_m : target.apoapsisAltitude_m;
      c[k++] = (outcome.radius_m - world.radius_m - altitude_m) / HEIGHT_UNIT_M;
      if (direct) c[k++] = outcome.verticalSpeed_m_s / CLIMB_UNIT_M_S;
      else c[k++] = (outcome.lowest_m - world.radius_m - this.floor_m) / HEIGHT_UNIT_M - x[this.clearanceAt]!;
    }
    const limit = this.trials.pressureLimit_Pa;
    if (limit !== null && this.limited) c[k] = outcome.peakPressure_Pa / limit - 1 + x[this.size - 1]!;
    return -outcome.margin_m_s / MARGIN_UNIT_M_S;
  };

  /** Margin of a value of `evaluate`, m/s. */
  static margin_m_s(value: number): number {
    return -value * MARGIN_UNIT_M_S;
  }
}

function coordinateOf(range: Range, value: number): number {
  return range.log ? Math.log(value / range.unit) : value / range.unit;
}

function rangesOf(trials: TrialFlights, ending: Ending): Range[] {
  const { world, target, stages } = trials.frame;
  const ranges: Range[] = [];
  if (target.kind !== 'suborbital') {
    // In a gravity turn the path's tilt grows as a power of time from the kick's (Culler & Fried 1957), so that
    // the kick counts by its logarithm.
    ranges.push({ name: 'rise', unit: 10, lower: 3, upper: 60 });
    if (world.atmosphere !== null) {
      ranges.push({ name: 'kick', unit: 3 * DEGREE, lower: 0.1 * DEGREE, upper: 45 * DEGREE, log: true });
      const most = trials.frame.angleOfAttackLimit_rad ?? MOST_ATTACK_RAD;
      if (most > 0) ranges.push({ name: 'attack', unit: 10 * DEGREE, lower: 0, upper: most });
    }
    ranges.push({ name: 'tangent', unit: 1, lower: -3, upper: 8 });
    ranges.push({ name: 'fall', unit: 1 / trials.steeredBurn_s, lower: -0.05, upper: 0.1 });
  }
  if (stages > 1) ranges.push({ name: 'coast', unit: 50, lower: STAGING_S, upper: 900 });
  if (ending.kind === 'transfer' && target.kind === 'orbit') {
    const upper = 0.7 * targetSpeed_m_s(world, target, target.apoapsisAltitude_m);
    ranges.push({ name: 'missing', unit: 100, lower: 1, upper });
    ranges.push({ name: 'clearance', unit: HEIGHT_UNIT_M, lower: 0, upper: 1e3 * HEIGHT_UNIT_M });
  }
  const limit = trials.pressureLimit_Pa;
  if (limit !== null && target.kind !== 'suborbital')
    ranges.push({ name: 'slack', unit: 1, lower: 0, upper: 10 });
  return ranges;
}

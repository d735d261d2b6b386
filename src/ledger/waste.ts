import type { Flight } from '../flight/types.ts';
import type { ToGoTarget } from '../orbit/toGo.ts';
import { ToGoAlong } from '../orbit/toGoAlong.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { AscentSpan } from './ascentEnd.ts';
import { statesBetween, toGoTarget } from './budget.ts';
import { dragAcceleration } from './dragAcceleration.ts';

/** What lets the projected total rise (METHODS §5). */
export const wasteCauses = ['backPressure', 'drag', 'offDirection', 'offTime', 'drift'] as const;
export type WasteCause = (typeof wasteCauses)[number];

/** A waste in m/s, and in kg of propellant at the masses at which it arose; kg is null without a known engine. */
export interface WasteAmount {
  readonly deltaV_m_s: number;
  readonly propellant_kg: number | null;
}

/** The projected total's rise from lift-off to the ascent's end, split by cause. Times from lift-off. */
export interface Waste {
  /** Nodes: closer together where the split needs them. */
  readonly time_s: readonly number[];
  /** Axis index of each node. */
  readonly index: readonly number[];
  /** Running sums at the nodes, m/s. */
  readonly cumulative: Readonly<Record<WasteCause, readonly number[]>>;
  /** Rise of the projected total itself at the nodes, m/s. */
  readonly total: readonly number[];
  /** What the quadrature leaves over at the nodes: total less all causes, m/s. */
  readonly remainder: readonly number[];
  readonly amounts: Readonly<Record<WasteCause, WasteAmount>>;
  readonly totalAmount: WasteAmount;
}

/** Even nodes to begin with, and how many there may be in the end. */
const FIRST_NODES = 40;
const MOST_NODES = 140;
/** A stretch is halved while its parts miss its rise by more than this, m/s, and it is longer than that, s. */
const CLOSE_M_S = 0.01;
const SHORTEST_S = 0.15;

/** What one node knows. */
interface Node {
  readonly i: number;
  readonly toGo: number;
  readonly radial: number;
  readonly tangential: number;
  readonly magnitude: number;
  /** Rate of C along the ballistic arc, m/s². */
  readonly drift: number;
}

type Parts = Record<WasteCause, number> & { total: number };

/**
 * Splits the slope of the projected total P = S + C with the primer vector λ (Lawden 1963; METHODS §5): back
 * pressure (Tvac − T)/m, drag −λ·a, off-direction T/m·(|λ| − λ·t̂), off-time T/m·(1 − |λ|) and drift, the rate of C
 * along the ballistic arc. Off-direction of the last stretch before cutoff is booked by difference. Null where
 * the target has no delta-v to go, or engine, pitch or drag are not known.
 * @param ways those that the budget found from lift-off on, which spare their search
 */
export function wasteOf(flight: Flight, span: AscentSpan, ways: ToGoAlong | null = null): Waste | null {
  const { mission, gaps, pitch, time } = flight;
  const target = toGoTarget(mission.target, mission.world.radius_m);
  const air = dragAcceleration(flight);
  if (target === null || air === null || pitch === null || !gaps.known || !gaps.backKnown) return null;
  const first = flight.liftOffIndex;
  const last = span.end;
  if (last - first < 2) return null;
  const along = ways ?? newWays(flight, target, first, last);
  const known = new Map<number, Node>();
  const nodeAt = (i: number): Node => {
    let node = known.get(i);
    if (node === undefined) {
      node = { i, toGo: along.valueAt(i - first), ...along.slopesAt(i - first) };
      known.set(i, node);
    }
    return node;
  };
  const field = new Field(flight, pitch, air);
  const near = (i: number, from: number, to: number): number =>
    first + along.knownNear(i - first, from - first, to - first);
  const nodes = chooseNodes(flight, first, last, near, nodeAt, field);
  const out = {
    time_s: [time[first]!],
    index: [first],
    cumulative: { backPressure: [0], drag: [0], offDirection: [0], offTime: [0], drift: [0] },
    total: [0],
    remainder: [0],
  };
  const kg = { backPressure: 0, drag: 0, offDirection: 0, offTime: 0, drift: 0, total: 0 };
  for (let k = 1; k < nodes.length; k++) {
    const from = nodeAt(nodes[k - 1]!);
    const to = nodeAt(nodes[k]!);
    const parts = field.split(from, to);
    const sum = wasteCauses.reduce((s, cause) => s + parts[cause], 0);
    if (k === nodes.length - 1 && span.isCutoff) parts.offDirection += parts.total - sum;
    out.time_s.push(time[to.i]!);
    out.index.push(to.i);
    out.total.push(out.total[k - 1]! + parts.total);
    let left = out.total[k]!;
    for (const cause of wasteCauses) {
      const value = out.cumulative[cause][k - 1]! + parts[cause];
      out.cumulative[cause].push(value);
      left -= value;
    }
    out.remainder.push(left);
    const worth = kilogramsPer(flight, from.i, to.i);
    for (const cause of [...wasteCauses, 'total'] as const) kg[cause] += worth(parts[cause]);
  }
  const end = nodes.length - 1;
  const amount = (value: number, mass: number): WasteAmount => ({
    deltaV_m_s: value,
    propellant_kg: Number.isFinite(mass) ? mass : null,
  });
  return {
    ...out,
    amounts: {
      backPressure: amount(out.cumulative.backPressure[end]!, kg.backPressure),
      drag: amount(out.cumulative.drag[end]!, kg.drag),
      offDirection: amount(out.cumulative.offDirection[end]!, kg.offDirection),
      offTime: amount(out.cumulative.offTime[end]!, kg.offTime),
      drift: amount(out.cumulative.drift[end]!, kg.drift),
    },
    totalAmount: amount(out.total[end]!, kg.total),
  };
}

function newWays(flight: Flight, target: ToGoTarget, first: number, last: number): ToGoAlong {
  const { world } = flight.mission;
  const problem = {
    mu_m3_s2: world.mu_m3_s2,
    floorRadius_m: world.radius_m + world.orbitFloor_m,
    target,
  };
  return new ToGoAlong(problem, statesBetween(flight, first, last));
}

/**
 * Propellant that a waste is worth at a mass, kg: m·(1 − exp(−w/(g0·Isp))) (METHODS §5).
 * @param deltaV_m_s the waste; negative gives negative propellant
 */
export function propellantWorth_kg(deltaV_m_s: number, mass_kg: number, isp_s: number): number {
  return -mass_kg * Math.expm1(-deltaV_m_s / (STANDARD_GRAVITY_M_S2 * isp_s));
}

/** The engine that burns at an axis point, or the next one that will, else the last; s, NaN where unknown. */
export function ispAt_s(flight: Flight, i: number): number {
  const burn = flight.burns.find((b) => b.endIndex >= i) ?? flight.burns.at(-1);
  const at = flight.time[i]!;
  const segment = burn?.segments.find((s) => s.end_s >= at) ?? burn?.segments.at(-1);
  return segment?.isp_s ?? Number.NaN;
}

function kilogramsPer(flight: Flight, from: number, to: number): (deltaV_m_s: number) => number {
  const mass = flight.mass === null ? Number.NaN : (flight.mass[from]! + flight.mass[to]!) / 2;
  const isp = ispAt_s(flight, from);
  return (w) => propellantWorth_kg(w, mass, isp);
}

/** Even nodes, the edges of burns and drops, and halves of stretches whose parts do not make up their rise. */
function chooseNodes(
  flight: Flight,
  first: number,
  last: number,
  near: (i: number, from: number, to: number) => number,
  nodeAt: (i: number) => Node,
  field: Field,
): number[] {
  const { time } = flight;
  const chosen = new Set([first, last]);
  for (const burn of flight.burns) for (const i of [burn.startIndex, burn.endIndex]) chosen.add(i);
  for (const drop of flight.drops) for (const i of [drop.index, drop.index + 1]) chosen.add(i);
  for (let k = 1; k < FIRST_NODES; k++)
    chosen.add(
      near(nearest(time, time[first]! + ((time[last]! - time[first]!) * k) / FIRST_NODES), first, last),
    );
  const sorted = [...chosen].filter((i) => i >= first && i <= last).sort((a, b) => a - b);
  const stretch = (from: number, to: number): { from: number; to: number; miss: number } => {
    const parts = field.split(nodeAt(from), nodeAt(to));
    return { from, to, miss: Math.abs(wasteCauses.reduce((s, cause) => s - parts[cause], parts.total)) };
  };
  const isLong = (s: { from: number; to: number }): boolean =>
    s.to - s.from >= 2 && time[s.to]! - time[s.from]! >= SHORTEST_S;
  const open = sorted
    .slice(1)
    .map((to, k) => stretch(sorted[k]!, to))
    .filter(isLong);
  // In a noisy log a stretch's rise is no better known than its end states.
  const close = Math.max(CLOSE_M_S, Math.hypot(flight.noise.speed_m_s, flight.noise.verticalSpeed_m_s) / 2);
  while (open.length > 0 && sorted.length < MOST_NODES) {
    let worst = 0;
    for (let k = 1; k < open.length; k++) if (open[k]!.miss > open[worst]!.miss) worst = k;
    const { from, to, miss } = open[worst]!;
    if (!(miss > close)) break;
    const even = Math.min(to - 1, Math.max(from + 1, nearest(time, (time[from]! + time[to]!) / 2)));
    // A sample that is known already costs no search: one in the middle half does as well.
    const aside = (to - from) / 4;
    const middle = near(even, from + aside, to - aside);
    sorted.push(middle);
    open.splice(worst, 1, ...[stretch(from, middle), stretch(middle, to)].filter(isLong));
  }
  return sorted.sort((a, b) => a - b);
}

function nearest(time: Float64Array, at: number): number {
  let low = 0;
  let high = time.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (time[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low > 0 && at - time[low - 1]! < time[low]! - at ? low - 1 : low;
}

/** Thrust and drag in the plane of motion along the flight, as radial and tangential parts. */
class Field {
  private readonly flight: Flight;
  private readonly thrustUp: Float64Array;
  private readonly thrustAlong: Float64Array;
  private readonly dragUp: Float64Array;
  private readonly dragAlong: Float64Array;

  constructor(flight: Flight, pitch: Float64Array, air: Float64Array) {
    this.flight = flight;
    const { track, flightPathAngle } = flight;
    const n = flight.time.length;
    this.thrustUp = pitch.map((p) => Math.sin(p));
    this.thrustAlong = new Float64Array(n);
    this.dragUp = new Float64Array(n);
    this.dragAlong = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const inertialCourse = Math.atan2(track.inertialEast[i]!, track.inertialNorth[i]!);
      this.thrustAlong[i] = Math.cos(pitch[i]!) * Math.cos(track.heading[i]! - inertialCourse);
      this.dragUp[i] = -air[i]! * Math.sin(flightPathAngle[i]!);
      this.dragAlong[i] =
        -air[i]! * Math.cos(flightPathAngle[i]!) * Math.cos(track.course[i]! - inertialCourse);
    }
  }

  /** The rise of P between two nodes by its causes, λ led straight from one to the other. */
  split(from: Node, to: Node): Parts {
    const { time, gaps } = this.flight;
    const parts: Parts = { backPressure: 0, drag: 0, offDirection: 0, offTime: 0, drift: 0, total: 0 };
    const span = time[to.i]! - time[from.i]!;
    let spent = 0;
    for (let i = from.i; i < to.i; i++) {
      const dt = time[i + 1]! - time[i]!;
      const share = ((time[i]! + time[i + 1]!) / 2 - time[from.i]!) / span;
      const up = from.radial + share * (to.radial - from.radial);
      const along = from.tangential + share * (to.tangential - from.tangential);
      const size = from.magnitude + share * (to.magnitude - from.magnitude);
      const thrust = gaps.vacuum[i]! - gaps.back[i]!;
      spent += gaps.vacuum[i]!;
      parts.backPressure += gaps.back[i]!;
      if (thrust !== 0) {
        const used =
          (up * (this.thrustUp[i]! + this.thrustUp[i + 1]!) +
            along * (this.thrustAlong[i]! + this.thrustAlong[i + 1]!)) /
          2;
        parts.offDirection += thrust * (size - used);
        parts.offTime += thrust * (1 - size);
      }
      parts.drag -=
        ((up * (this.dragUp[i]! + this.dragUp[i + 1]!) +
          along * (this.dragAlong[i]! + this.dragAlong[i + 1]!)) /
          2) *
        dt;
    }
    parts.drift = ((from.drift + to.drift) / 2) * span;
    parts.total = spent + to.toGo - from.toGo;
    return parts;
  }
}

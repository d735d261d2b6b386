import { median } from '../../log/statistics.ts';
import { bareDragArea_m2, parachutesDragArea_m2 } from '../../mission/returnAreas.ts';
import type { Flight } from '../types.ts';
import { airDeceleration } from './airDeceleration.ts';

/** Parachutes as the deceleration shows them. Times from lift-off. */
export interface ParachuteDescent {
  readonly open_s: number;
  /** When nine tenths of the drag area under them is there; null unless they fill. */
  readonly full_s: number | null;
  /** Whether the drag area comes up to the card's: 'untold' where the card, or the mass, gives nothing to compare. */
  readonly inflation: 'full' | 'partial' | 'untold';
  /** True where they were out already when the air could first be felt: the opening itself is not seen. */
  readonly openedBefore: boolean;
  /** Drag area over mass before opening (null where not seen) and under the canopies at last, m²/kg. */
  readonly bare_m2_kg: number | null;
  readonly reached_m2_kg: number;
  /** Further openings between the first and the last (a reefed canopy, a second one), s. */
  readonly steps_s: readonly number[];
}

/** Least drag area over mass of a filled parachute, m²/kg: a bare body falls at β ≥ 70 kg/m². */
const LEAST_M2_KG = 0.014;
/** Dynamic pressure from which a deceleration tells a drag area, Pa. */
const FELT_PA = 8;
/** Factor by which the drag area rises, within seconds, when a canopy opens. */
const OPENING = 1.8;
/**
 * Share of the card's drag area from which the parachutes count as full. Below it a body sinks 15 % faster than it
 * should (1/1.15² = 0.756): more than the noise of a log and a canopy's quoted drag area make.
 */
const FULL_SHARE = 0.75;
/** A canopy fills within this time; what takes longer is the air of another Mach number. */
const SUDDEN_S = 12;

/**
 * Finds parachutes in an unpowered descent that begins at axis point `from`: the drag area over mass,
 * (D/m)/q, jumps when one opens and stays up. Null where nothing of the kind is seen.
 */
export function findParachutes(flight: Flight, from: number): ParachuteDescent | null {
  if (flight.mission.world.atmosphere === null || from >= flight.time.length - 5) return null;
  const { time, dynamicPressure } = flight;
  const { deceleration, sigma_m_s2 } = airDeceleration(flight, from);
  const index: number[] = [];
  const at: number[] = [];
  const area: number[] = [];
  const apart_s = Math.max(NEAREST_S, (time[time.length - 1]! - time[from]!) / MOST_SAMPLES);
  const end_s = landedAt(flight, from) - SETTLED_S;
  for (let i = from; i < time.length && time[i]! < end_s; i++) {
    const [a, q] = [deceleration[i]!, dynamicPressure[i]!];
    if (!Number.isFinite(a) || q < FELT_PA || a < 3 * sigma_m_s2) continue;
    // The deceleration is smoothed over more than this: nearer samples tell nothing new.
    if (at.length > 0 && time[i]! - at[at.length - 1]! < apart_s) continue;
    index.push(i);
    at.push(time[i]!);
    area.push(a / q);
  }
  if (at.length < 8) return null;
  const steps = openings(at, area);
  const first = steps[0];
  const last = steps[steps.length - 1];
  // The last quarter of the fall, but nothing from before the last canopy had come out.
  const since = Math.min(last?.end ?? 0, area.length - 3);
  const reached = median(area.slice(Math.max(since, Math.floor(0.75 * area.length))));
  if (!(reached > LEAST_M2_KG)) return null;
  const inflation = inflationOf(flight, index[first?.start ?? 0]!, reached);
  const found = { inflation, reached_m2_kg: reached, openedBefore: first === undefined };
  if (first === undefined || last === undefined) {
    // Out from the start: nothing but a canopy is so light for its size.
    const whole = median(area);
    if (whole < LEAST_M2_KG) return null;
    return {
      ...found,
      open_s: at[0]!,
      full_s: inflation === 'full' ? at[0]! : null,
      bare_m2_kg: null,
      steps_s: [],
    };
  }
  // The area may go on growing after the jump: full is when it has come to what it keeps.
  let full = last.end;
  while (full < at.length - 1 && area[full]! < 0.9 * reached) full++;
  return {
    ...found,
    open_s: at[first.start]!,
    full_s: inflation === 'full' ? at[full]! : null,
    bare_m2_kg: first.before,
    steps_s: steps.slice(1).map((s) => at[s.start]!),
  };
}

/** Compares the drag area over mass under the canopies with the card's. */
function inflationOf(flight: Flight, open: number, reached_m2_kg: number): ParachuteDescent['inflation'] {
  const body = flight.mission.returnVehicle;
  const mass = bodyMass_kg(flight, open);
  if (body === null || mass === null) return 'untold';
  const canopies = parachutesDragArea_m2(body);
  if (canopies === 0) return 'untold';
  return reached_m2_kg * mass >= FULL_SHARE * (bareDragArea_m2(body) + canopies) ? 'full' : 'partial';
}

/** Mass of what comes down at axis point `i`, kg: the log's, else the card's; null where neither tells it. */
export function bodyMass_kg(flight: Flight, i: number): number | null {
  return flight.mass?.[i] ?? flight.mission.returnVehicle?.mass_kg ?? null;
}

/** Samples of the drag area are taken so far apart, s, and at most so many. */
const NEAREST_S = 0.2;
const MOST_SAMPLES = 8000;

/** So long before the touchdown the ground itself is in the deceleration's window, s. */
const SETTLED_S = 5;

/** When the body first stands still on its way down; for ever after a log that ends before. */
function landedAt({ time, speed, noise }: Flight, from: number): number {
  const still = Math.max(1, 5 * noise.speed_m_s);
  for (let i = from; i < time.length; i++) if (speed[i]! < still) return time[i]!;
  return Number.POSITIVE_INFINITY;
}

interface Opening {
  readonly start: number;
  /** First sample with nine tenths of the level that follows. */
  readonly end: number;
  readonly before: number;
}

/** Sudden lasting rises of a series. */
function openings(at: readonly number[], area: readonly number[]): Opening[] {
  const out: Opening[] = [];
  let i = 3;
  while (i < at.length - 2) {
    const before = levelAround(at, area, i, -1);
    const after = levelAfter(at, area, i);
    const isRise = after > OPENING * before && area[i]! > 1.15 * before && area[i + 1]! > 1.15 * before;
    if (!isRise || after < LEAST_M2_KG) {
      i++;
      continue;
    }
    let end = i;
    while (end < at.length && at[end]! - at[i]! <= SUDDEN_S && area[end]! < 0.9 * after) end++;
    out.push({ start: i, end, before });
    i = Math.max(i + 1, end);
    // Wait until the level behind is the new one.
    const settled = at[Math.min(i, at.length - 1)]! + 3;
    while (i < at.length && at[i]! < settled) i++;
  }
  return out;
}

/** Middle value over the four seconds (and at least three samples) before `i`. */
function levelAround(at: readonly number[], area: readonly number[], i: number, way: -1 | 1): number {
  const values: number[] = [];
  for (let j = i + way; j >= 0 && j < at.length; j += way) {
    if (values.length >= 3 && Math.abs(at[j]! - at[i]!) > 4) break;
    values.push(area[j]!);
  }
  return median(values);
}

/** The level that the series settles at within `SUDDEN_S` after `i`. */
function levelAfter(at: readonly number[], area: readonly number[], i: number): number {
  const values: number[] = [];
  for (let j = i; j < at.length && at[j]! - at[i]! <= SUDDEN_S; j++) values.push(area[j]!);
  return values.length < 3 ? Number.NaN : median(values.slice(Math.floor(values.length / 2)));
}

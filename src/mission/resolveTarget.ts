import { formatFigure, formatLength_m } from '../units/figures.ts';
import type { World } from '../world/types.ts';
import { badValue } from './badValue.ts';
import type { TargetCard } from './cardSchema.ts';
import type { Target } from './types.ts';

const DEGREE = Math.PI / 180;

/** Part of the target altitude, and metres at least, that an apsis may miss it by (METHODS §4). */
const TOLERANCE_PART = 0.05;
const TOLERANCE_LEAST_M = 1000;

/** The target, and whether anyone gave it. */
export interface ResolvedTarget {
  readonly target: Target;
  readonly known: boolean;
}

/**
 * The target of the card, or the circular orbit asked for, or the lowest circular orbit above the floor.
 * @throws LossbookError card-bad-value where the card's altitudes contradict each other or are missing.
 */
export function resolveTarget(
  card: TargetCard | null,
  asked_m: number | undefined,
  world: World,
  file: string | undefined,
  assumed: string[],
): ResolvedTarget {
  if (asked_m !== undefined) {
    return { target: orbit(card ?? {}, asked_m, asked_m, world, assumed), known: true };
  }
  const kind = card?.kind ?? 'orbit';
  if (card !== null && kind === 'suborbital') return { target: suborbital(card, file, assumed), known: true };
  if (card !== null && kind === 'escape') {
    if (card.c3_m2_s2 === undefined || card.c3_m2_s2 === null) {
      assumed.push('The escape is taken to be just reached (C3 = 0): the card gives no target.c3_m2_s2.');
    }
    return { target: { kind: 'escape', c3_m2_s2: card.c3_m2_s2 ?? 0 }, known: true };
  }
  if (kind === 'landing') return { target: { kind: 'landing' }, known: true };

  const apoapsis = card?.apoapsisAltitude_m ?? null;
  const periapsis = card?.periapsisAltitude_m ?? null;
  if (card === null || (apoapsis === null && periapsis === null)) {
    const floor = world.orbitFloor_m;
    assumed.push(
      `The target is taken to be the lowest circular orbit above the orbit floor of ${world.name}, ${formatLength_m(floor)}: none is given.`,
    );
    return { target: orbit(card ?? {}, floor, floor, world, assumed), known: false };
  }
  const low = periapsis ?? apoapsis ?? 0;
  const high = apoapsis ?? periapsis ?? 0;
  if (apoapsis === null || periapsis === null) {
    assumed.push(`The target orbit is taken to be circular at ${formatLength_m(low)}: one apsis is given.`);
  }
  if (high < low) {
    throw badValue('target.apoapsisAltitude_m', high, `not below target.periapsisAltitude_m = ${low}`, file);
  }
  return { target: orbit(card, high, low, world, assumed), known: true };
}

function orbit(
  card: TargetCard,
  apoapsisAltitude_m: number,
  periapsisAltitude_m: number,
  world: World,
  assumed: string[],
): Target {
  if (periapsisAltitude_m < world.orbitFloor_m) {
    assumed.push(
      `The target’s periapsis, ${formatLength_m(periapsisAltitude_m)}, lies below the orbit floor of ${world.name}, ${formatLength_m(world.orbitFloor_m)}: reaching it is not yet an orbit that lasts.`,
    );
  }
  return {
    kind: 'orbit',
    apoapsisAltitude_m,
    periapsisAltitude_m,
    tolerance_m: tolerance(card, periapsisAltitude_m, TOLERANCE_LEAST_M, assumed),
    inclination_rad: radians(card.inclination_deg),
    argumentOfPeriapsis_rad: radians(card.argumentOfPeriapsis_deg),
    ascendingNode_rad: radians(card.ascendingNode_deg),
  };
}

function suborbital(card: TargetCard, file: string | undefined, assumed: string[]): Target {
  const peakAltitude_m = card.peakAltitude_m ?? null;
  if (peakAltitude_m === null) {
    throw badValue('target.peakAltitude_m', undefined, 'given for a suborbital target', file);
  }
  return { kind: 'suborbital', peakAltitude_m, tolerance_m: tolerance(card, peakAltitude_m, 0, assumed) };
}

/**
 * As given, or 5 % of the altitude (of an ellipse, its periapsis) and at least `least_m`: for an orbit 1 km, for a peak
 * nothing, since it may lie at a few hundred metres.
 */
function tolerance(card: TargetCard, altitude_m: number, least_m: number, assumed: string[]): number {
  if (card.tolerance_m !== undefined && card.tolerance_m !== null) return card.tolerance_m;
  const tolerance_m = Math.max(least_m, TOLERANCE_PART * altitude_m);
  const least = least_m > 0 ? ` and at least ${formatFigure(least_m / 1000)} km` : '';
  assumed.push(
    `The target counts as met within ${formatLength_m(tolerance_m)}: 5 % of its altitude${least}.`,
  );
  return tolerance_m;
}

function radians(degrees: number | null | undefined): number | null {
  return degrees === null || degrees === undefined ? null : degrees * DEGREE;
}

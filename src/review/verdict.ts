import { stageName } from '../flight/events.ts';
import type { Flight } from '../flight/types.ts';
import { type AscentSpan, orbitAt } from '../ledger/ascentEnd.ts';
import type { Budget } from '../ledger/budget.ts';
import type { PlanarOrbit } from '../orbit/planar.ts';
import type { World } from '../world/types.ts';
import type { OrbitFigures, VerdictCode } from './types.ts';
import { decimal, formatHeight, formatKm, goalWord } from './wording.ts';

export interface Verdict {
  readonly code: VerdictCode;
  /** One sentence with its figure. */
  readonly text: string;
  /** A second, shorter line: the orbit, what was left. */
  readonly detail: string;
}

export interface VerdictQuestion {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly budget: Budget;
  /** Orbit at the ascent's end with its intervals. */
  readonly orbit: OrbitFigures;
  /** Delta-v to go at the ascent's end, m/s; null for a target without one. */
  readonly toGo: number | null;
}

/** Judges the ascent: METHODS §4 and §5, the codes of DESIGN. */
export function judge(q: VerdictQuestion): Verdict {
  const { flight, span } = q;
  const { world, target } = flight.mission;
  const floor = world.radius_m + world.orbitFloor_m;
  const end = orbitAt(flight, span.end);
  const detail = detailLine(q, end);
  const say = (code: VerdictCode, text: string): Verdict => ({ code, text, detail });

  if (flight.startsInFlight && orbitAt(flight, 0).periapsisRadius_m >= floor) {
    return say(
      'started-in-orbit',
      `The log begins in orbit (${apsides(orbitAt(flight, 0), world.radius_m)}): there is no ascent to review.`,
    );
  }
  if (target.kind === 'escape') {
    const c3 = 2 * end.energy_J_kg;
    if (c3 >= target.c3_m2_s2 - 1e-3 * Math.abs(end.energy_J_kg)) {
      return say(
        'escape',
        `Escaped: C3 ${decimal(c3 / 1e6, 3)} km²/s² at cutoff, ${decimal(target.c3_m2_s2 / 1e6, 3)} wanted.`,
      );
    }
  } else if (end.energy_J_kg >= 0) {
    return say(
      'escape',
      `Escaping: ${decimal(Math.sqrt(2 * end.energy_J_kg), 0)} m/s in excess of escape speed far out.`,
    );
  }
  if (target.kind === 'suborbital') return suborbital(q, end, say);
  const wide = straddlesFloor(q);
  if (wide !== null) return say('undetermined', wide);
  if (end.periapsisRadius_m >= floor) return orbitReached(q, end, say);
  return notInOrbit(q, end, say);
}

type Say = (code: VerdictCode, text: string) => Verdict;

function orbitReached(q: VerdictQuestion, end: PlanarOrbit, say: Say): Verdict {
  const { mission } = q.flight;
  const { world, target } = mission;
  const shape = apsides(end, world.radius_m);
  const left = leftOver(q);
  if (target.kind !== 'orbit' || !mission.targetKnown) return say('in-orbit', `In orbit: ${shape}${left}.`);
  const high = end.apoapsisRadius_m - world.radius_m - target.apoapsisAltitude_m;
  const low = end.periapsisRadius_m - world.radius_m - target.periapsisAltitude_m;
  if (Math.abs(high) <= target.tolerance_m && Math.abs(low) <= target.tolerance_m) {
    return say('in-orbit', `In orbit on target: ${shape}${left}.`);
  }
  const which = Math.abs(high) >= Math.abs(low) ? `apoapsis ${offBy(high)}` : `periapsis ${offBy(low)}`;
  return say('orbit-off-target', `In orbit, off target: ${shape}, ${which}${left}.`);
}

function offBy(error_m: number): string {
  return `${formatHeight(Math.abs(error_m))} too ${error_m > 0 ? 'high' : 'low'}`;
}

function leftOver(q: VerdictQuestion): string {
  const left = q.budget.obtainable?.[q.budget.atEnd];
  return left === undefined ? '' : `, ${decimal(left, 0)} m/s left aboard`;
}

function suborbital(q: VerdictQuestion, end: PlanarOrbit, say: Say): Verdict {
  const { flight } = q;
  const target = flight.mission.target;
  if (target.kind !== 'suborbital') throw new Error('called for a suborbital target only');
  const logged = flight.altitude.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const peak =
    flight.mission.world.atmosphere === null ? end.apoapsisRadius_m - flight.mission.world.radius_m : logged;
  const miss = peak - target.peakAltitude_m;
  if (Math.abs(miss) <= target.tolerance_m || miss > 0) {
    return say(
      'suborbital-as-planned',
      `Suborbital as planned: peak ${formatHeight(peak)}, ${formatHeight(target.peakAltitude_m)} wanted.`,
    );
  }
  return notInOrbit(
    q,
    end,
    say,
    `Peak ${formatHeight(peak)}, ${formatHeight(-miss)} under the ${formatHeight(target.peakAltitude_m)} wanted`,
  );
}

/** Tanks with less than this share of the vehicle's delta-v are called dry. */
const DRY_SHARE = 0.002;

function notInOrbit(q: VerdictQuestion, end: PlanarOrbit, say: Say, lead?: string): Verdict {
  const { flight, span, budget, toGo } = q;
  const { mission } = flight;
  const left = budget.obtainable?.[budget.atEnd] ?? null;
  const short = toGo === null ? null : left === null ? toGo : toGo - left;
  const head = lead ?? 'Not in orbit';
  const shortText =
    short === null
      ? ''
      : `: ${decimal(Math.max(0, short), 0)} m/s ${left === null ? 'to go at cutoff' : 'short'}`;
  const lost = outOfReach(q);
  if (span.burn === null && flight.burns.length === 0 && left === null) {
    return say(
      'undetermined',
      `${head}${shortText}. Which engines burnt, and what was left, the log does not show.`,
    );
  }
  if (!span.isCutoff && span.burn !== null) {
    return say(
      'suborbital-lost-in-flight',
      `Lost in flight: the log ends under thrust at ${decimal(flight.time[span.end]!, 0)} s${toGo === null ? '' : `, ${decimal(toGo, 0)} m/s before ${goalWord(mission.target)}`}.${lost}`,
    );
  }
  const stages = mission.vehicle?.stages.length ?? 0;
  const unlit =
    span.burn !== null &&
    stages > span.burn.stage + 1 &&
    !flight.burns.some((b) => b.stage > span.burn!.stage);
  const stageDry = span.burn !== null && isStageDry(q);
  if (left !== null && toGo !== null && unlit && stageDry) {
    const name = stageName(flight, span.burn!.stage + 1);
    return say(
      'suborbital-stage-not-lit',
      `${head}: the stage “${name}” was never lit, with ${decimal(left, 0)} m/s in its tanks and ${decimal(toGo, 0)} m/s to go.`,
    );
  }
  if (left !== null && toGo !== null && left >= toGo) {
    return say(
      'suborbital-early-cutoff',
      `${head}: cut off ${decimal(toGo, 0)} m/s early, with ${decimal(left, 0)} m/s still in the tanks.`,
    );
  }
  if (left === null) {
    if (end.periapsisRadius_m >= mission.world.radius_m)
      return say('orbit-decaying', `${decaying(mission.world, end)}.`);
    return say(
      'undetermined',
      `${head}${shortText}. Whether propellant was left the log and card do not tell.`,
    );
  }
  if (end.periapsisRadius_m >= mission.world.radius_m) {
    return say('orbit-decaying', `${decaying(mission.world, end)}${shortText}.${lost}`);
  }
  const total = budget.vehicleDeltaV ?? Number.POSITIVE_INFINITY;
  const dry =
    left <= DRY_SHARE * total
      ? ', tanks dry'
      : `, with ${decimal(left, 0)} m/s left in the tanks: not enough`;
  return say('suborbital-out-of-propellant', `${head}${shortText}${dry}.${lost}`);
}

/** From when on the goal could not be reached; with the figures where the vehicle never had enough. */
function outOfReach({ flight, budget }: VerdictQuestion): string {
  const { lostAt_s, obtainable, toGo } = budget;
  if (lostAt_s === null) return '';
  const goal = goalWord(flight.mission.target);
  const head = ` ${goal.charAt(0).toUpperCase()}${goal.slice(1)} was out of reach`;
  if (obtainable === null || toGo === null || obtainable[0]! >= toGo[0]!)
    return `${head} from ${decimal(lostAt_s, 0)} s at the latest.`;
  const start = flight.startsInFlight ? 'when the log begins' : 'at lift-off';
  return `${head} from the start: ${decimal(obtainable[0]!, 0)} m/s were aboard ${start}, with ${decimal(toGo[0]!, 0)} m/s to go at least.`;
}

/** Without air nothing brings an orbit down: there a low periapsis is only nearer the ground than the floor allows. */
function decaying({ name, radius_m, orbitFloor_m, atmosphere }: World, end: PlanarOrbit): string {
  const low = `periapsis ${formatKm(end.periapsisRadius_m - radius_m)} is under the floor of ${name}, ${formatKm(orbitFloor_m)}`;
  return atmosphere === null ? `In orbit, but too low: ${low}` : `In an orbit that decays: ${low}`;
}

/** True when the last stage that burnt has (nearly) nothing left of its own. */
function isStageDry(q: VerdictQuestion): boolean {
  const { flight, span } = q;
  const stage = flight.mission.vehicle?.stages[span.burn?.stage ?? -1];
  if (
    stage === undefined ||
    span.burn === null ||
    span.burn.endMass_kg === null ||
    span.burn.startMass_kg === null
  )
    return false;
  if (stage.propellantMass_kg === null) return false;
  const used = flight.burns
    .filter((b) => b.stage === span.burn!.stage)
    .reduce((sum, b) => sum + ((b.startMass_kg ?? 0) - (b.endMass_kg ?? 0)), 0);
  return used >= 0.97 * stage.propellantMass_kg;
}

/** When the interval of the periapsis reaches from well below the floor to above it, the log cannot tell. */
function straddlesFloor(q: VerdictQuestion): string | null {
  const { periapsisAltitude_m: periapsis, apoapsisAltitude_m: apoapsis } = q.orbit;
  const floor = q.flight.mission.world.orbitFloor_m;
  if (periapsis.value === null || periapsis.low === null || periapsis.high === null) return null;
  let low = periapsis.low;
  let high = periapsis.high;
  for (const a of periapsis.assumptions ?? []) {
    low = Math.min(low, a.low);
    high = Math.max(high, a.high);
  }
  if (low >= floor || high < floor) return null;
  const why = periapsis.assumptions?.map((a) => a.what).join('; ');
  const range = `periapsis ${formatKm(low)} to ${formatKm(high)}`;
  return `Whether it is in orbit cannot be told: ${range}, apoapsis about ${formatKm(apoapsis.value ?? Number.NaN)}${why ? ` (open: ${why})` : ''}.`;
}

function apsides(orbit: PlanarOrbit, radius_m: number): string {
  return `${formatKm(orbit.apoapsisRadius_m - radius_m, false)} × ${formatKm(orbit.periapsisRadius_m - radius_m)}`;
}

function detailLine(q: VerdictQuestion, end: PlanarOrbit): string {
  const { flight, span, budget } = q;
  const parts: string[] = [];
  const when = span.isCutoff ? 'at cutoff' : 'at the end of the log';
  if (Number.isFinite(end.apoapsisRadius_m))
    parts.push(`${apsides(end, flight.mission.world.radius_m)} ${when}`);
  const left = budget.obtainable?.[budget.atEnd];
  if (left !== undefined && q.toGo !== null) parts.push(`margin ${decimal(left - q.toGo, 0)} m/s`);
  const lift = budget.margin?.[0];
  const start = flight.startsInFlight ? 'when the log begins' : 'at lift-off';
  if (lift !== undefined)
    parts.push(`${decimal(Math.abs(lift), 0)} m/s ${lift < 0 ? 'too little' : 'to spare'} ${start}`);
  return parts.join(' · ');
}

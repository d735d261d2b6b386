import { stageName } from '../../flight/events.ts';
import { isBraking, orbitAt } from '../../ledger/ascentEnd.ts';
import { toGoAt } from '../../ledger/budget.ts';
import { decimal, formatHeight, goalWord } from '../wording.ts';
import { type Candidate, type Finder, type Occasion, reachedTarget } from './types.ts';

/** Cutoffs too early and too late, stages never lit, and logs that end under thrust. */
export const cutoffFindings: Finder = (o) => [
  ...endsInFlight(o),
  ...notLit(o),
  ...early(o),
  ...late(o),
  ...leftAboard(o),
];

function endsInFlight({ flight, span, strips, verdict }: Occasion): Candidate[] {
  if (verdict !== 'suborbital-lost-in-flight') return [];
  const at = flight.time[span.end]!;
  const last = (name: keyof typeof strips.channels): number | null => {
    const values = strips.channels[name]?.values;
    for (let i = span.end; values !== undefined && i >= 0 && i > span.end - 5; i--)
      if (Number.isFinite(values[i]!)) return values[i]!;
    return null;
  };
  const told = [
    [last('dynamicPressure_Pa'), 1e-3, 1, ' kPa of dynamic pressure'],
    [last('acceleration_m_s2'), 1, 1, ' m/s² of load'],
    [last('angleOfAttack_deg'), 1, 1, '° of angle of attack'],
  ].flatMap(([value, scale, digits, unit]) =>
    typeof value === 'number' ? [`${decimal(value * (scale as number), digits as number)}${unit}`] : [],
  );
  return [
    {
      code: 'log-ends-in-flight',
      start_s: Math.max(0, at - 5),
      end_s: at,
      cost_m_s: null,
      sigma_m_s: 0,
      claim: 'cutoff',
      text: `The log ends in flight, under thrust, at ${decimal(at, 1)} s.`,
      evidence: told.length === 0 ? 'Its last rows show thrust.' : `Its last row shows ${told.join(', ')}.`,
      advice:
        'If the vehicle broke up there, look first at angle of attack and dynamic pressure just before; if only the recording stopped, let it run on.',
    },
  ];
}

function notLit(o: Occasion): Candidate[] {
  if (o.verdict !== 'suborbital-stage-not-lit') return [];
  const { flight, span, budget } = o;
  const left = budget.obtainable?.[budget.atEnd] ?? 0;
  const toGo = budget.toGo?.[budget.atEnd] ?? 0;
  const name = stageName(flight, (span.burn?.stage ?? 0) + 1);
  return [
    {
      code: 'stage-not-lit',
      start_s: flight.time[span.end]!,
      end_s: flight.time[flight.time.length - 1]!,
      cost_m_s: Math.min(left, toGo),
      sigma_m_s: o.sigma_m_s,
      claim: 'cutoff',
      text: `The stage “${name}” was never lit.`,
      evidence: `${decimal(left, 0)} m/s were in its tanks and ${decimal(toGo, 0)} m/s to go.`,
      advice: 'Check that its ignition is armed and comes right after separation.',
    },
  ];
}

function early(o: Occasion): Candidate[] {
  const { flight, span, budget, orbit } = o;
  if (!span.isCutoff || reachedTarget(o) || goesOn(o)) return [];
  const left = budget.obtainable?.[budget.atEnd] ?? null;
  const toGo = budget.toGo?.[budget.atEnd] ?? null;
  if (left === null || toGo === null || left < toGo || o.verdict === 'suborbital-stage-not-lit') return [];
  const at = flight.time[span.end]!;
  const { target } = flight.mission;
  const rising = target.kind === 'suborbital';
  const apsis = rising ? 'apoapsis' : 'periapsis';
  const height = (rising ? orbit.apoapsisAltitude_m : orbit.periapsisAltitude_m).value;
  // An orbit that lies over its target was not left too early.
  if (target.kind === 'orbit' && height !== null && height > target.periapsisAltitude_m) return [];
  const flow = flowAt(o);
  const longer = flow === null ? null : toGo / flow;
  return [
    {
      code: 'cutoff-early',
      start_s: at,
      end_s: at + (longer ?? 0),
      cost_m_s: toGo,
      sigma_m_s: o.sigma_m_s,
      claim: 'cutoff',
      text: `Cut off ${decimal(toGo, 0)} m/s too early, with ${decimal(left, 0)} m/s still aboard.`,
      evidence: `At cutoff, ${decimal(at, 1)} s, ${apsis} was ${height === null ? 'not reached' : `at ${formatHeight(height)}`}.`,
      advice:
        longer === null
          ? `Watch the ${apsis}, not the clock: cut off when it comes up to the target.`
          : `Burn about ${decimal(longer, longer < 10 ? 1 : 0)} s longer: watch the ${apsis}, not the clock, and cut off when it comes up to the target.`,
    },
  ];
}

/** Thrust goes on toward the target after the ascent, as at the apoapsis of a transfer. */
function goesOn({ flight, span }: Occasion): boolean {
  return flight.burns.some(
    (b) => b.startIndex > span.end && b.startIndex <= span.comingDown && !isBraking(flight, b),
  );
}

/** Short of orbit with something still in the tanks: it would not have been enough, but it was not used either. */
function leftAboard(o: Occasion): Candidate[] {
  const { flight, span, budget } = o;
  const left = budget.obtainable?.[budget.atEnd] ?? null;
  const toGo = budget.toGo?.[budget.atEnd] ?? null;
  if (!span.isCutoff || reachedTarget(o) || left === null || toGo === null || left >= toGo) return [];
  // A vehicle that was never to go to orbit does not burn on for it.
  if (!flight.mission.targetKnown && (budget.margin?.[0] ?? 0) < 0) return [];
  const at = flight.time[span.end]!;
  return [
    {
      code: 'propellant-left',
      start_s: at,
      end_s: at,
      cost_m_s: left,
      sigma_m_s: o.sigma_m_s,
      claim: 'dropped',
      text: `Cut off with ${decimal(left, 0)} m/s still in the tanks.`,
      evidence: `${decimal(toGo, 0)} m/s were to go; what was left would have brought it nearer.`,
      advice: `Short of ${goalWord(flight.mission.target)}, burn until the tanks are empty.`,
    },
  ];
}

/** Thrust over mass at the cutoff, m/s². */
function flowAt({ flight, span }: Occasion): number | null {
  const { gaps, time } = flight;
  let dv = 0;
  let dt = 0;
  for (let i = span.end - 1; i >= 0 && dt < 1; i--) {
    if (gaps.burn[i] === -1) continue;
    dv += gaps.vacuum[i]!;
    dt += time[i + 1]! - time[i]!;
  }
  return gaps.known && dt > 0 && dv > 0 ? dv / dt : null;
}

/** Thrust after the delta-v to go was at its least only moves the orbit away again. */
function late(o: Occasion): Candidate[] {
  const { flight, span, budget } = o;
  const { toGo, spent, time_s, atEnd } = budget;
  if (toGo === null || spent === null || !span.isCutoff || span.burn === null) return [];
  let k = atEnd;
  while (k > 0 && time_s[k - 1]! >= span.burn.start_s && toGo[k - 1]! <= toGo[k]!) k--;
  if (k === atEnd) return [];
  const least_s = leastBetween(o, k);
  const i = nearestIndex(flight.time, least_s);
  const atLeast = toGoAt(flight, i) ?? toGo[k]!;
  let burnt = 0;
  for (let j = i; j < span.end; j++) burnt += flight.gaps.vacuum[j]!;
  const cost = burnt + toGo[atEnd]! - atLeast;
  const end = flight.time[span.end]!;
  return [
    {
      code: 'cutoff-late',
      start_s: flight.time[i]!,
      end_s: end,
      cost_m_s: cost,
      sigma_m_s: o.sigma_m_s,
      claim: 'cutoff',
      text: `Cut off ${decimal(end - flight.time[i]!, 1)} s too late.`,
      evidence: `At ${decimal(flight.time[i]!, 1)} s only ${decimal(atLeast, 0)} m/s were to go; after it ${decimal(burnt, 0)} m/s were burnt that moved the orbit off its target, and ${decimal(toGo[atEnd]!, 0)} m/s to go were left.`,
      advice: cutOffWhen(o, i),
    },
  ];
}

/** What to watch for: the apsis that comes to the target last, unless the other had been there long before. */
function cutOffWhen({ flight }: Occasion, least: number): string {
  const { target, world } = flight.mission;
  const low = orbitAt(flight, least).periapsisRadius_m - world.radius_m;
  if (target.kind !== 'orbit' || low >= target.periapsisAltitude_m - target.tolerance_m)
    return 'Ease the throttle as the target comes near, and cut off when the lower apsis reaches it.';
  return 'Cut off when the apoapsis reaches the target, coast up to it and burn the rest there; where the engine cannot be lit again, fly flatter so that both apsides come to the target together.';
}

/** Where the delta-v to go was least, sample by sample about a node of the curve. */
function leastBetween({ flight, budget, span }: Occasion, k: number): number {
  const from = nearestIndex(flight.time, budget.time_s[Math.max(0, k - 1)]!);
  const to = Math.min(span.end, nearestIndex(flight.time, budget.time_s[Math.min(k + 1, budget.atEnd)]!));
  let best = from;
  let least = Number.POSITIVE_INFINITY;
  const step = Math.max(1, Math.floor((to - from) / 40));
  for (let i = from; i <= to; i += step) {
    const value = toGoAt(flight, i);
    if (value !== null && value < least) {
      least = value;
      best = i;
    }
  }
  return flight.time[best]!;
}

function nearestIndex(time: Float64Array, at: number): number {
  let i = 0;
  while (i < time.length - 1 && time[i]! < at) i++;
  return i;
}

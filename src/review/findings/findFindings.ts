import { ispAt_s, propellantWorth_kg } from '../../ledger/waste.ts';
import { figure, unavailable } from '../figure.ts';
import type { Finding } from '../types.ts';
import { airFindings } from './air.ts';
import { cutoffFindings } from './cutoff.ts';
import { directionFindings } from './direction.ts';
import { lastStageFindings } from './lastStage.ts';
import {
  type Candidate,
  type Claim,
  contributed,
  type Finder,
  type Occasion,
  steeredPastCutoff,
} from './types.ts';

/** Finders that look at the flight as it was logged. */
const finders: readonly Finder[] = [cutoffFindings, airFindings, lastStageFindings, directionFindings];

/** Costs smaller than this are not worth a sentence, m/s. */
const LEAST_M_S = 5;

/**
 * The findings on a flight, dearest first. Each metre per second is claimed once: of several that draw on the same
 * claim the dearest stands, and against a plan what the more special ones explain is taken off the rest. One whose
 * cost is within its own 95 % interval of zero is not shown.
 * @param further finders that need the flight flown again, or a plan
 */
export function findFindings(o: Occasion, further: readonly Finder[] = []): Finding[] {
  const candidates = settled(
    o,
    [...finders, ...further].flatMap((find) => find(o)),
  );
  const shown = candidates.filter(
    (c) => c.cost_m_s === null || c.cost_m_s > Math.max(LEAST_M_S, 1.96 * c.sigma_m_s),
  );
  const rank = (c: Candidate): number => c.cost_m_s ?? Number.POSITIVE_INFINITY;
  return shown.sort((a, b) => rank(b) - rank(a)).map((c) => asFinding(o, c));
}

/** One finding a claim, and what two of them would both claim taken off one. */
function settled(o: Occasion, candidates: readonly Candidate[]): Candidate[] {
  const dearest = (claim: Claim): Candidate | null =>
    candidates
      .filter((c) => c.claim === claim && c.code !== 'angle-of-attack-in-air')
      .sort((a, b) => cost(b) - cost(a))[0] ?? null;
  // An engine under its rating makes a stage weak: that is told once.
  const weak = candidates.some((c) => c.code === 'thrust-below-rating');
  const out: Candidate[] = candidates.filter(
    (c) =>
      c.claim === 'dropped' || (c.claim === 'vehicle' && !(weak && c.code === 'upper-stage-underpowered')),
  );
  const lastStage = dearest('last-stage');
  for (const claim of ['throttle', 'timing', 'plane'] as const) {
    const c = dearest(claim);
    if (c !== null) out.push(c);
  }
  if (lastStage !== null) out.push(lastStage);
  const cutoff = dearest('cutoff');
  const told = cutoff?.code === 'cutoff-late' && lastStage !== null && steeredPastCutoff(o);
  if (cutoff !== null && !told) {
    // What bad steering left to go is the steering's, not the cutoff's; what went better than planned before it is
    // no loss either.
    const taken =
      cutoff.code === 'cutoff-early'
        ? Math.max(0, lastStage === null ? 0 : cost(lastStage))
        : Math.max(0, -(contributed(o, 'last-stage-pitch') ?? 0));
    out.push(cutoff.cost_m_s === null ? cutoff : { ...cutoff, cost_m_s: cutoff.cost_m_s - taken });
  }
  return [...out, ...pitchAndAir(o, candidates, dearest('pitch'), out)];
}

/** The pitch program and, told apart from it, the angle of attack in dense air. */
function pitchAndAir(
  o: Occasion,
  candidates: readonly Candidate[],
  program: Candidate | null,
  others: readonly Candidate[],
): Candidate[] {
  const inAir = candidates.filter((c) => c.code === 'angle-of-attack-in-air');
  const planned = contributed(o, 'pitch');
  if (planned === null) {
    const rest = program === null ? others : [...others, program];
    // Off its path in the air a flight also gets by too little thrust or a late turn: then it is part of that.
    const alone = inAir.filter((air) => rest.every((c) => c.claim === 'plane' || cost(c) < cost(air)));
    return program === null ? alone : [program, ...alone];
  }
  // Wavering about the plan: the whole of the pitch's part is the angle of attack's.
  const first = inAir[0];
  if (first === undefined) return program === null ? [] : [program];
  // Turning too hard, too soon or too late is being off the path.
  if (program?.code.startsWith('pitch-over-')) return [program];
  if (program === null) return [{ ...first, cost_m_s: Math.max(...inAir.map(cost)) }];
  const taken = Math.min(cost(first), Math.max(0, planned));
  if (taken < LEAST_M_S) return [program];
  return [
    { ...program, cost_m_s: planned - taken },
    { ...first, cost_m_s: taken },
  ];
}

function cost(c: Candidate): number {
  return c.cost_m_s ?? 0;
}

function asFinding({ flight }: Occasion, c: Candidate): Finding {
  let i = 0;
  while (i < flight.time.length - 1 && flight.time[i]! < c.end_s) i++;
  const mass = flight.mass?.[i] ?? Number.NaN;
  const cost_m_s = c.cost_m_s;
  const kg = cost_m_s === null ? Number.NaN : propellantWorth_kg(cost_m_s, mass, ispAt_s(flight, i));
  const share = cost_m_s === null || cost_m_s === 0 ? 0 : c.sigma_m_s / Math.abs(cost_m_s);
  return {
    code: c.code,
    start_s: c.start_s,
    end_s: c.end_s,
    cost_m_s:
      cost_m_s === null
        ? unavailable('it cannot be told in delta-v')
        : figure(cost_m_s, c.sigma_m_s, 'derived'),
    propellant_kg: Number.isFinite(kg)
      ? figure(kg, Math.abs(kg) * share, 'derived')
      : unavailable('mass or engine is not known'),
    text: c.text,
    evidence: c.evidence,
    advice: c.advice,
  };
}

import { ispAt_s, propellantWorth_kg } from '../../ledger/waste.ts';
import { figure, unavailable } from '../figure.ts';
import type { Finding } from '../types.ts';
import { airFindings } from './air.ts';
import { cutoffFindings } from './cutoff.ts';
import { directionFindings } from './direction.ts';
import { lastStageFindings } from './lastStage.ts';
import { pitchFindings } from './pitch.ts';
import { stagingFindings } from './staging.ts';
import { throttleFindings } from './throttle.ts';
import { type Candidate, type Claim, contributed, type Finder, type Occasion } from './types.ts';
import { vehicleFindings } from './vehicle.ts';

const finders: readonly Finder[] = [
  cutoffFindings,
  airFindings,
  pitchFindings,
  lastStageFindings,
  throttleFindings,
  stagingFindings,
  vehicleFindings,
  directionFindings,
];

/** Costs smaller than this are not worth a sentence, m/s. */
const LEAST_M_S = 5;

/**
 * The findings on a flight, dearest first. Each metre per second is claimed once: of several that draw on the same
 * claim the dearest stands, and against a plan what the more special ones explain is taken off the rest. One whose
 * cost is within its own 95 % interval of zero is not shown.
 */
export function findFindings(o: Occasion): Finding[] {
  const candidates = settled(
    o,
    finders.flatMap((find) => find(o)),
  );
  const shown = candidates.filter(
    (c) => c.cost_m_s === null || c.cost_m_s > Math.max(LEAST_M_S, 1.96 * c.sigma_m_s),
  );
  const rank = (c: Candidate): number => c.cost_m_s ?? Number.POSITIVE_INFINITY;
  return shown.sort((a, b) => rank(b) - rank(a)).map((c) => asFinding(o, c));
}

/** One finding a claim, except that angle of attack in air is told beside the pitch program that it is part of. */
function settled(o: Occasion, candidates: readonly Candidate[]): Candidate[] {
  const out: Candidate[] = [];
  const byClaim = new Map<Claim, Candidate[]>();
  for (const c of candidates) byClaim.set(c.claim, [...(byClaim.get(c.claim) ?? []), c]);
  for (const [claim, group] of byClaim) {
    const air = group.find((c) => c.code === 'angle-of-attack-in-air');
    const rest = group.filter((c) => c !== air).sort((a, b) => (b.cost_m_s ?? 0) - (a.cost_m_s ?? 0));
    const whole = claim === 'pitch' ? contributed(o, 'pitch') : null;
    if (claim === 'vehicle' || claim === 'dropped') out.push(...rest);
    else if (rest[0] !== undefined) {
      const taken = air === undefined || whole === null ? 0 : Math.min(air.cost_m_s ?? 0, Math.max(0, whole));
      const cost = rest[0].cost_m_s;
      out.push(cost === null ? rest[0] : { ...rest[0], cost_m_s: cost - taken });
    }
    if (air !== undefined) {
      // Against a plan, only what the pitch cost more than planned can be the angle of attack's.
      out.push(whole === null ? air : { ...air, cost_m_s: Math.min(air.cost_m_s ?? 0, Math.max(0, whole)) });
    }
  }
  return out;
}

function asFinding({ flight }: Occasion, c: Candidate): Finding {
  let i = 0;
  while (i < flight.time.length - 1 && flight.time[i]! < c.end_s) i++;
  const mass = flight.mass?.[i] ?? Number.NaN;
  const cost = c.cost_m_s;
  const kg = cost === null ? Number.NaN : propellantWorth_kg(cost, mass, ispAt_s(flight, i));
  const share = cost === null || cost === 0 ? 0 : c.sigma_m_s / Math.abs(cost);
  return {
    code: c.code,
    start_s: c.start_s,
    end_s: c.end_s,
    cost_m_s:
      cost === null ? unavailable('it cannot be told in delta-v') : figure(cost, c.sigma_m_s, 'derived'),
    propellant_kg: Number.isFinite(kg)
      ? figure(kg, Math.abs(kg) * share, 'derived')
      : unavailable('mass or engine is not known'),
    text: c.text,
    evidence: c.evidence,
    advice: c.advice,
  };
}

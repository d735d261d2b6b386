import { buildFlight } from '../flight/buildFlight.ts';
import { findEvents, stageName } from '../flight/events.ts';
import { findPhases } from '../flight/phases.ts';
import type { Burn, Flight } from '../flight/types.ts';
import { type AscentSpan, ascentSpan } from '../ledger/ascentEnd.ts';
import { budgetAlong, toGoAt } from '../ledger/budget.ts';
import { wasteOf } from '../ledger/waste.ts';
import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import type { Plan } from '../plan/types.ts';
import { budgetBand } from './budgetBand.ts';
import { budgetFigures } from './budgetFigures.ts';
import { CAUTIONS } from './cautions.ts';
import { consistencyNotes, frameOfSpeed } from './consistency.ts';
import { derivationList } from './derivation.ts';
import { figure, sigmaOf, unavailable } from './figure.ts';
import { findFindings } from './findings/findFindings.ts';
import { frameLedger } from './ledgerFigures.ts';
import { missionPart } from './missionPart.ts';
import { orbitFigures } from './orbitFigures.ts';
import { orbitFindings } from './orbitWork/findings.ts';
import { orbitWork } from './orbitWork/orbitWork.ts';
import { ledgerWithPitchBias, pitchCorrection, pitchReading, vehicleWithPitchBias } from './pitchBias.ts';
import { plannedTime_s } from './planEventTimes.ts';
import { propellantAt_kg } from './propellantAt.ts';
import { type ReviewRequest, readRequest } from './readRequest.ts';
import { spentFigure } from './spentIn.ts';
import { makeStrips } from './strips.ts';
import { toGoSigma } from './toGoError.ts';
import type { Analysis, Figure, Review, ReviewBurn } from './types.ts';
import { vehicleFigures } from './vehicleFigures.ts';
import { judge } from './verdict.ts';
import { wasteFigures } from './wasteFigures.ts';
import { wayDownFaults, wayDownReview } from './wayDown/wayDown.ts';
import { worldCheck } from './worldCheck.ts';

/**
 * Reviews one flight.
 * @throws LossbookError for input that cannot be read or from which nothing can be derived.
 */
export async function reviewFlight(request: ReviewRequest): Promise<Analysis> {
  const { mission, log, plan } = await readRequest(request);
  return reviewLog(log, mission, request.card?.name ?? null, plan, request.causes);
}

/**
 * Reviews a log that was already read, on a mission that was already read. `causes` re-flies the flight to find
 * what cost what; against a plan that is always done. Code that only some flights need is loaded when one does.
 */
export async function reviewLog(
  log: Log,
  mission: Mission,
  cardName: string | null,
  plan: Plan | null = null,
  causes = false,
): Promise<Analysis> {
  const flight = buildFlight(log, mission);
  const span = ascentSpan(flight);
  const speedFrame = frameOfSpeed(flight);
  const pitch = pitchReading(flight);
  const corrected = speedFrame.length > 0 ? null : pitchCorrection(flight, pitch);
  const ground = ledgerWithPitchBias(frameLedger(flight, span, 'ground'), 'ground', corrected);
  const inertial = ledgerWithPitchBias(frameLedger(flight, span, 'inertial'), 'inertial', corrected);
  const budget = budgetAlong(flight, span, ground.curves.ideal);
  const orbit = orbitFigures(flight, span.end);
  const budgetAtEnd = budgetFigures(flight, span, budget, ground.entries);
  const toGo = budget.toGo?.[budget.atEnd] ?? null;
  const verdict = judge({ flight, span, budget, orbit, toGo });
  const found = findEvents(flight);
  const reached = ['in-orbit', 'orbit-off-target', 'escape'].includes(verdict.code)
    ? flight.time[span.end]!
    : verdict.code === 'started-in-orbit'
      ? flight.time[0]! - 1
      : null;
  const known = ground.totals.ideal !== null;
  const t = log.time;
  const step = t.length > 1 ? medianStep(t) : Number.NaN;
  const strips = makeStrips(flight, ground.curves);
  const help = flight.track.inertialSpeed[span.end]! - flight.speed[span.end]!;
  const worldNote = worldCheck(flight);
  const totalSigma_m_s = sigmaOf(budgetAtEnd.projectedTotal);
  const waste = wasteFigures(flight, wasteOf(flight, span, budget.ways));
  const side = { flight, span, budget, strips, events: found, totalSigma_m_s };
  const anew = plan !== null || (known && causes) ? await import('./causes.ts') : null;
  const planned = anew === null || plan === null ? null : anew.planPart(side, plan);
  const plannedEvents = planned === null ? [] : findEvents(planned.flown.flight);
  const again = anew !== null && known ? anew.reflown(flight) : null;
  const occasion = {
    ...side,
    ground: ground.curves,
    orbit,
    verdict: verdict.code,
    sigma_m_s: totalSigma_m_s,
    reflown: again,
    plan: planned,
    contributions: planned?.contributions ?? null,
  };
  const findings = findFindings(occasion, anew?.causeFinders);
  const work = await orbitWork(flight, span);
  const wayDown = await wayDownReview(flight, span, found);
  const review: Review = {
    schema: 'lossbook-review/1',
    source: {
      file: log.source.name,
      rows: log.source.rows,
      start_s: flight.time[0]!,
      end_s: flight.time[flight.time.length - 1]!,
      rate_Hz: Math.round(100 / step) / 100,
      part: log.source.part,
      parts: log.source.parts,
      liftOffLogTime_s: flight.liftOffLogTime_s,
      card: cardName,
      plan: plan?.name ?? null,
    },
    mission: missionPart(flight),
    vehicle: vehicleWithPitchBias(vehicleFigures(flight), corrected),
    channels: log.readings,
    quality: [
      ...log.notes,
      ...flight.notes,
      ...(worldNote === null ? [] : [worldNote]),
      ...consistencyNotes(flight, speedFrame, pitch),
    ],
    events: found.map((e) => ({
      name: e.name,
      time_s: e.time_s,
      planned_s: plannedTime_s(found, plannedEvents, e),
      subject: e.subject,
      altitude_m: finiteOrNull(flight.altitude[e.index]),
      speed_m_s: finiteOrNull(flight.speed[e.index]),
    })),
    phases: findPhases(flight, found, reached),
    ledger: {
      start_s: flight.time[span.start]!,
      end_s: flight.time[span.end]!,
      ground: ground.entries,
      inertial: inertial.entries,
      rotationHelp: figure(
        help,
        flight.noise.speed_m_s / 2.4,
        flight.track.reading === 'logged' ? 'derived' : 'assumed',
      ),
      headingReading: headingReading(flight),
    },
    orbit: { atCutoff: orbit, cutoff_s: span.isCutoff ? flight.time[span.end]! : null },
    budget: {
      ...budgetAtEnd,
      propellantLeft_kg: propellantLeft(flight, span),
      lostAt_s: budget.lostAt_s,
      curves: {
        time_s: budget.time_s,
        spent: known && budget.spent !== null ? budget.spent : budget.time_s.map(() => null),
        toGo: budget.toGo ?? budget.time_s.map(() => null),
        projectedTotal:
          known && budget.toGo !== null && budget.spent !== null
            ? budget.toGo.map((c, k) => c + budget.spent![k]!)
            : budget.time_s.map(() => null),
        margin: budget.margin ?? budget.time_s.map(() => null),
      },
      band: budgetBand(flight, span, budget, budgetAtEnd),
    },
    burns: burnList(flight, span),
    derivation: derivationList(flight),
    verdict,
    return: wayDown,
    orbitWork: work,
    causesSought: again !== null,
    // A log that begins in orbit holds no ascent to find fault with.
    findings: [
      ...(verdict.code === 'started-in-orbit' ? [] : findings),
      ...orbitFindings(work),
      ...(await wayDownFaults(flight, wayDown)),
    ],
    whyNot:
      anew?.whyNot({
        flight,
        span,
        budget,
        verdict: verdict.code,
        reflown: again,
        plan: planned?.flown ?? null,
      }) ?? null,
    waste,
    againstPlan: planned?.document ?? null,
    cautions: CAUTIONS,
  };
  return planned === null ? { review, strips } : { review, strips, planStrips: planned.strips };
}

/** Propellant aboard at the ascent's end. */
function propellantLeft(flight: Flight, span: AscentSpan): Figure {
  const left = propellantAt_kg(flight, span.end);
  return left === null
    ? unavailable(flight.mass === null ? 'the log has no mass' : 'no card gives the vehicle’s masses')
    : figure(left, flight.noise.mass_kg, 'measured');
}

function headingReading(flight: Flight): string | null {
  if (flight.track.reading === 'logged') return null;
  return flight.derivations.find((d) => d.quantity === 'course')?.how ?? null;
}

function burnList(flight: Flight, span: AscentSpan): ReviewBurn[] {
  return flight.burns.map((burn) => {
    const deltaV = spentFigure(flight, burn);
    const used =
      burn.startMass_kg === null || burn.endMass_kg === null
        ? null
        : burn.startMass_kg - burn.endMass_kg - droppedIn(flight, burn.startIndex, burn.endIndex);
    return {
      start_s: burn.start_s,
      end_s: burn.end_s,
      stage: stageName(flight, burn.stage),
      ascent: burn.endIndex <= span.end,
      deltaV,
      efficiency:
        burn.startIndex > span.end
          ? unavailable('after the ascent: the orbit work tells it')
          : efficiencyOf(flight, burn, deltaV),
      propellant_kg:
        used === null ? unavailable('the log has no mass') : figure(used, flight.noise.mass_kg, 'measured'),
    };
  });
}

/** −ΔC/ΔS of a burn, as sure as the states at its edges and what it spent. */
function efficiencyOf(flight: Flight, burn: Burn, deltaV: Figure): Figure {
  if (deltaV.value === null) return unavailable(deltaV.reason ?? 'the engine is not known');
  const before = toGoAt(flight, burn.startIndex);
  const after = toGoAt(flight, burn.endIndex);
  if (before === null || after === null || deltaV.value === 0)
    return unavailable('the target asks for no orbit');
  const value = (before - after) / deltaV.value;
  const sigma = Math.hypot(
    toGoSigma(flight, burn.startIndex, before),
    toGoSigma(flight, burn.endIndex, after),
    value * sigmaOf(deltaV),
  );
  return figure(value, sigma / deltaV.value, 'derived');
}

/** Mass thrown off inside a burn is not propellant. */
function droppedIn(flight: Flight, from: number, to: number): number {
  return flight.drops.filter((d) => d.index >= from && d.index < to).reduce((sum, d) => sum + d.mass_kg, 0);
}

function medianStep(t: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(t.length / 5000));
  for (let i = stride; i < t.length; i += stride) steps.push((t[i]! - t[i - stride]!) / stride);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1]!;
}

function finiteOrNull(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

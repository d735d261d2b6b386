import { type FlightEvent, findEvents } from '../flight/events.ts';
import type { Flight } from '../flight/types.ts';
import { type AscentSpan, orbitAt } from '../ledger/ascentEnd.ts';
import type { Budget } from '../ledger/budget.ts';
import { ispAt_s, propellantWorth_kg } from '../ledger/waste.ts';
import type { FlownPlan } from '../refly/flyPlan.ts';
import { planDeviations } from './deviations.ts';
import { figure, unavailable } from './figure.ts';
import { pairedEvents } from './planEventTimes.ts';
import { propellantAt_kg } from './propellantAt.ts';
import { makeStrips } from './strips.ts';
import type { AgainstPlan, BudgetCurves, ComparedState, Contribution, Strips } from './types.ts';
import { decimal, formatKm } from './wording.ts';

const DEG = 180 / Math.PI;

/** The flown side of the comparison. */
export interface FlownSide {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly budget: Budget;
  readonly strips: Strips;
  readonly events: readonly FlightEvent[];
  /** One-sigma error of the flown projected total, m/s. */
  readonly totalSigma_m_s: number;
}

/** The flight against its plan, flown by the same rocket with the same payload (METHODS §6). */
export function againstPlan(
  flown: FlownSide,
  plan: FlownPlan,
  contributions: readonly Contribution[] = [],
): AgainstPlan {
  const plannedEvents = findEvents(plan.flight);
  const planStrips = makeStrips(plan.flight, plan.ground);
  const pairs = pairedEvents(flown.events, plannedEvents).filter(
    (p) => withinAscent(p.flown, flown.span, flown.flight) || withinAscent(p.planned, plan.span, plan.flight),
  );
  const planned = budgetAtEnd(plan.budget);
  const own = budgetAtEnd(flown.budget);
  return {
    plan: { name: plan.plan.name, form: plan.plan.form, assumed: plan.assumed, text: planText(plan) },
    events: pairs.map((p) => {
      const at = (read: (flight: Flight, i: number) => number | null): ComparedState =>
        compared(
          p.planned === null ? null : read(plan.flight, p.planned.index),
          p.flown === null ? null : read(flown.flight, p.flown.index),
        );
      return {
        name: (p.flown ?? p.planned)!.name,
        subject: (p.flown ?? p.planned)!.subject,
        time_s: compared(p.planned?.time_s ?? null, p.flown?.time_s ?? null),
        altitude_m: at((f, i) => f.altitude[i]!),
        speed_m_s: at((f, i) => f.speed[i]!),
        mass_kg: at((f, i) => f.mass?.[i] ?? null),
        propellant_kg: at(propellantAt_kg),
      };
    }),
    cutoffs: pairs
      .filter((p) => (p.flown ?? p.planned)!.name === 'cutoff')
      .map((p) => cutoff(p, flown.flight, plan.flight)),
    deviations: planDeviations(flown, { flight: plan.flight, span: plan.span, strips: planStrips }),
    margin: againstSpent(flown.budget, plan.budget),
    plannedCurves: curvesOf(plan.budget),
    planned,
    avoidable: avoidable(flown, own.projectedTotal, planned.projectedTotal),
    contributions,
  };
}

function withinAscent(event: FlightEvent | null, span: AscentSpan, flight: Flight): boolean {
  return event !== null && event.time_s <= flight.time[span.end]! + 0.01;
}

/** Flown less planned; null where one of them is. */
function compared(planned: number | null, flown: number | null): ComparedState {
  const p = planned !== null && Number.isFinite(planned) ? planned : null;
  const f = flown !== null && Number.isFinite(flown) ? flown : null;
  return { planned: p, flown: f, difference: p === null || f === null ? null : f - p };
}

function cutoff(
  pair: { readonly flown: FlightEvent | null; readonly planned: FlightEvent | null },
  flown: Flight,
  planned: Flight,
): AgainstPlan['cutoffs'][number] {
  const at = (read: (flight: Flight, i: number) => number | null): ComparedState =>
    compared(
      pair.planned === null ? null : read(planned, pair.planned.index),
      pair.flown === null ? null : read(flown, pair.flown.index),
    );
  const radius = flown.mission.world.radius_m;
  return {
    subject: (pair.flown ?? pair.planned)!.subject ?? '',
    states: {
      time_s: compared(pair.planned?.time_s ?? null, pair.flown?.time_s ?? null),
      altitude_m: at((f, i) => f.altitude[i]!),
      speed_m_s: at((f, i) => f.speed[i]!),
      inertialSpeed_m_s: at((f, i) => f.track.inertialSpeed[i]!),
      flightPathAngle_deg: at((f, i) => f.flightPathAngle[i]! * DEG),
      apoapsisAltitude_m: at((f, i) => orbitAt(f, i).apoapsisRadius_m - radius),
      periapsisAltitude_m: at((f, i) => orbitAt(f, i).periapsisRadius_m - radius),
      mass_kg: at((f, i) => f.mass?.[i] ?? null),
    },
  };
}

function budgetAtEnd(budget: Budget): AgainstPlan['planned'] {
  const at = (curve: readonly number[] | null): number | null => curve?.[budget.atEnd] ?? null;
  const spent = at(budget.spent);
  const toGo = at(budget.toGo);
  return {
    spent,
    toGo,
    projectedTotal: spent === null || toGo === null ? null : spent + toGo,
    margin: at(budget.margin),
  };
}

function curvesOf(budget: Budget): BudgetCurves {
  const blank = budget.time_s.map(() => null);
  const { spent, toGo } = budget;
  return {
    time_s: budget.time_s,
    spent: spent ?? blank,
    toGo: toGo ?? blank,
    projectedTotal: spent === null || toGo === null ? blank : toGo.map((c, k) => c + spent[k]!),
    margin: budget.margin ?? blank,
  };
}

/** Even steps of delta-v spent, m/s. */
const SPENT_STEPS = 120;

function againstSpent(flown: Budget, planned: Budget): AgainstPlan['margin'] {
  const top = Math.max(flown.spent?.[flown.atEnd] ?? 0, planned.spent?.[planned.atEnd] ?? 0);
  const spent = Array.from({ length: SPENT_STEPS + 1 }, (_, k) => (top * k) / SPENT_STEPS);
  const read = (b: Budget, curve: readonly number[] | null): (number | null)[] =>
    spent.map((s) => (b.spent === null || curve === null ? null : atSpent(b.spent, curve, b.atEnd, s)));
  const total = (b: Budget): number[] | null =>
    b.spent === null || b.toGo === null ? null : b.toGo.map((c, k) => c + b.spent![k]!);
  return {
    spent,
    planned: read(planned, planned.margin),
    flown: read(flown, flown.margin),
    plannedTotal: read(planned, total(planned)),
    flownTotal: read(flown, total(flown)),
  };
}

/** A curve where so much had been spent; at a step in it (a coast) what came after; null beyond the end. */
function atSpent(spent: readonly number[], curve: readonly number[], end: number, at: number): number | null {
  if (at > spent[end]! + 1e-9) return null;
  let k = end;
  while (k > 0 && spent[k - 1]! >= at) k--;
  if (k === 0) return curve[0]!;
  const step = spent[k]! - spent[k - 1]!;
  const share = step > 0 ? (at - spent[k - 1]!) / step : 1;
  return curve[k - 1]! + share * (curve[k]! - curve[k - 1]!);
}

function avoidable(
  { flight, span, totalSigma_m_s }: FlownSide,
  flown: number | null,
  planned: number | null,
): AgainstPlan['avoidable'] {
  if (flown === null || planned === null) {
    const none = unavailable('the projected total of flight or plan is not known');
    return { deltaV_m_s: none, propellant_kg: none };
  }
  const waste = flown - planned;
  return { deltaV_m_s: figure(waste, totalSigma_m_s, 'derived'), propellant_kg: worth(flight, span, waste) };
}

/** Propellant that a waste is worth at the mass of the ascent's end. */
export function worth(flight: Flight, span: AscentSpan, deltaV_m_s: number): ReturnType<typeof figure> {
  const mass = flight.mass?.[span.end];
  const isp = ispAt_s(flight, span.end);
  if (mass === undefined || !Number.isFinite(isp)) return unavailable('mass or engine is not known');
  return figure(propellantWorth_kg(deltaV_m_s, mass, isp), 0, 'derived');
}

function planText(plan: FlownPlan): string {
  const { flight, span, budget, end } = plan;
  if (end === 'impact') return 'Flown by this rocket, the plan comes down before it is done.';
  const orbit = orbitAt(flight, span.end);
  const radius = flight.mission.world.radius_m;
  const apsides = `${formatKm(orbit.apoapsisRadius_m - radius, false)} × ${formatKm(orbit.periapsisRadius_m - radius)}`;
  const margin = budget.margin?.[budget.atEnd];
  const left = margin === undefined ? '' : `, margin ${decimal(margin, 0)} m/s`;
  return `Flown by this rocket with its payload, the plan ends at ${apsides}${left}.`;
}

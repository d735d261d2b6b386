import { unavailable } from '../review/figure.ts';
import { valueAt } from '../review/sampleAt.ts';
import type { BudgetCurves, Figure, Review, Strips } from '../review/types.ts';
import { habitsOf } from './habits.ts';
import type { Attempt, ScoreName } from './types.ts';

/** Points that a curve and a path keep. */
const CURVE_POINTS = 100;
const PATH_POINTS = 60;

/**
 * Verdicts of ascents that were broken off: the margin then is that of a moment on the way, and falls until the
 * end of every other ascent. Held against those it would make the flight that blew up first the best.
 */
const unfinished: Partial<Record<Review['verdict']['code'], Figure>> = {
  'suborbital-lost-in-flight': unavailable('the log ends before the ascent does'),
  'suborbital-stage-not-lit': unavailable('the ascent ends before its last stage was lit'),
};

/** What a comparison needs of one review; strips, where they are at hand, tell paths and most habits. */
export function attemptOf(review: Review, strips: Strips | null = null): Attempt {
  const { source, mission, ledger, budget, verdict } = review;
  const ground = ledger.ground;
  const scores: Record<ScoreName, Figure> = {
    margin_m_s: unfinished[verdict.code] ?? budget.margin,
    projectedTotal_m_s: budget.projectedTotal,
    spent_m_s: budget.deltaVSpent,
    toGo_m_s: budget.deltaVToGo,
    remaining_m_s: budget.deltaVRemaining,
    gravity_m_s: ground.gravity,
    drag_m_s: ground.drag,
    steering_m_s: ground.steering,
    backPressure_m_s: ground.backPressure,
    propellantLeft_kg: budget.propellantLeft_kg,
  };
  const curve = curveOf(budget.curves, ledger.end_s);
  return {
    name: source.parts > 1 ? `${source.file}, flight ${source.part}` : source.file,
    pilot: mission.pilot,
    vehicle: mission.vehicle,
    mission: mission.name,
    world: mission.world,
    target: mission.target,
    payload_kg: mission.payload_kg,
    attempt: mission.attempt,
    date: mission.date,
    verdict: { code: verdict.code, text: verdict.text },
    scores,
    habits: habitsOf(review, strips),
    phases: phaseCosts(review),
    curve,
    path: pathOf(strips, ledger.end_s),
    events: review.events.flatMap((e) => {
      const spent = valueAt(budget.curves.time_s, budget.curves.spent, e.time_s);
      return e.time_s > ledger.end_s + 0.01 || spent === null
        ? []
        : [{ name: e.name, spent_m_s: spent, time_s: e.time_s }];
    }),
  };
}

/** The curves until the end of the ascent, on rising delta-v spent, thinned evenly in it. */
export function curveOf(curves: BudgetCurves, end_s: number): Attempt['curve'] {
  const { time_s, spent, projectedTotal, margin } = curves;
  const kept: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < time_s.length; k++) {
    const s = spent[k];
    if (s === null || s === undefined || time_s[k]! > end_s + 0.01) continue;
    // Where nothing burns the total hardly moves: the last point of a coast stands for it.
    if (s <= last + 1e-6 && kept.length > 0) kept[kept.length - 1] = k;
    else kept.push(k);
    last = Math.max(last, s);
  }
  const step = (last - (spent[kept[0] ?? 0] ?? 0)) / CURVE_POINTS;
  let next = Number.NEGATIVE_INFINITY;
  const thin = kept.filter((k, i) => {
    if (spent[k]! < next && i !== kept.length - 1) return false;
    next = spent[k]! + step;
    return true;
  });
  return {
    spent_m_s: thin.map((k) => spent[k]!),
    time_s: thin.map((k) => time_s[k]!),
    total_m_s: thin.map((k) => projectedTotal[k] ?? null),
    margin_m_s: thin.map((k) => margin[k] ?? null),
  };
}

/** What a phase is called in a comparison. */
export function phaseLabel(name: string, label: string): string {
  return name === label ? name : `${name}, ${label}`;
}

/** Rise of the projected total in the phases of the ascent; phases of one name are added up. */
function phaseCosts(review: Review): Attempt['phases'] {
  const { time_s, projectedTotal } = review.budget.curves;
  const costs = new Map<string, number>();
  for (const phase of review.phases) {
    if (phase.start_s >= review.ledger.end_s - 0.01 || phase.end_s <= 0) continue;
    const from = valueAt(time_s, projectedTotal, Math.max(phase.start_s, time_s[0] ?? 0));
    const to = valueAt(time_s, projectedTotal, Math.min(phase.end_s, review.ledger.end_s));
    if (from === null || to === null) continue;
    const label = phaseLabel(phase.name, phase.label);
    costs.set(label, (costs.get(label) ?? 0) + to - from);
  }
  return [...costs].map(([label, cost_m_s]) => ({ label, cost_m_s }));
}

/** The way up until the end of the ascent, thinned. */
export function pathOf(strips: Strips | null, end_s: number): Attempt['path'] {
  const altitude = strips?.channels.altitude_m?.values;
  const downrange = strips?.channels.downrange_m?.values;
  if (strips === null || altitude === undefined || downrange === undefined)
    return { downrange_m: [], altitude_m: [] };
  let end = strips.time_s.length - 1;
  while (end > 0 && strips.time_s[end]! > end_s + 0.01) end--;
  const points = Array.from({ length: PATH_POINTS }, (_, k) => Math.round((k * end) / (PATH_POINTS - 1)));
  const kept = [...new Set(points)].filter(
    (i) => Number.isFinite(altitude[i]!) && Number.isFinite(downrange[i]!),
  );
  // Metres are enough for a line of a chart.
  return {
    downrange_m: kept.map((i) => Math.round(downrange[i]!)),
    altitude_m: kept.map((i) => Math.round(altitude[i]!)),
  };
}

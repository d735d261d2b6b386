import { valueAt } from '../review/sampleAt.ts';
import { bestPhases } from './bestPhases.ts';
import { groupDifferences } from './groupDifferences.ts';
import { habitNames, habitRelations } from './habitRelations.ts';
import { heldBytes } from './heldBytes.ts';
import { partingOf } from './parting.ts';
import { progressOf } from './progress.ts';
import { reached } from './reached.ts';
import { type Spread, spread } from './spread.ts';
import type { Attempt, Comparison, ComparisonGroup, ComparisonRow, GroupBy, HabitName } from './types.ts';

export interface CompareOptions {
  /** What the attempts are put together by; default the pilot. */
  readonly by?: GroupBy;
  /**
   * What to hold the attempts against: the name of one of them, or an attempt from outside (another flight, the
   * plan, a best ascent); default the one with the greatest margin.
   */
  readonly reference?: string | Attempt;
}

/** Points of the axis that the curves of a comparison share. */
const CURVE_POINTS = 120;

/** Sets attempts side by side. */
export function compareAttempts(attempts: readonly Attempt[], options: CompareOptions = {}): Comparison {
  const by = options.by ?? 'pilot';
  const groups = grouped(attempts, by);
  const ordered = groups.flatMap((g) => g.attempts);
  const reference = referenceOf(ordered, options.reference);
  const alike = comparable(ordered);
  const rows = groups.flatMap((g) =>
    g.attempts.map(
      (a, k): ComparisonRow => ({
        name: a.name,
        group: g.name,
        attempt: a.attempt,
        order: k + 1,
        date: a.date,
        verdict: a.verdict,
        scores: a.scores,
        habits: a.habits,
        parting: reference === null || a === reference.attempt ? null : partingOf(a, reference.attempt),
      }),
    ),
  );
  const document: Omit<Comparison, 'bytes'> = {
    schema: 'lossbook-comparison/1',
    by,
    reference: reference === null ? null : { name: reference.attempt.name, why: reference.why },
    rows,
    groups: groups.map((g) => groupOf(g.name, g.attempts)),
    habits: alike ? habitRelations(ordered) : [],
    differences: alike
      ? groupDifferences(groups.map((g) => ({ name: g.name, margins: margins(g.attempts) })))
      : [],
    bestPhases: alike ? bestPhases(ordered) : [],
    stitched: [],
    curves: curvesOf(ordered),
    paths: ordered.map((a) => a.path),
    cautions: cautionsOf(ordered, alike),
  };
  return { ...document, bytes: heldBytes([attempts, document]) };
}

interface Group {
  readonly name: string;
  readonly attempts: readonly Attempt[];
}

function grouped(attempts: readonly Attempt[], by: GroupBy): Group[] {
  const lists = new Map<string, Attempt[]>();
  for (const attempt of attempts) {
    const name = groupName(attempt, by);
    const list = lists.get(name);
    if (list === undefined) lists.set(name, [attempt]);
    else list.push(attempt);
  }
  return [...lists].map(([name, list]) => ({ name, attempts: inOrder(list) }));
}

function groupName(attempt: Attempt, by: GroupBy): string {
  switch (by) {
    case 'payload':
      return attempt.payload_kg === null ? 'payload not known' : `${attempt.payload_kg} kg`;
    case 'verdict':
      return attempt.verdict.code;
    default:
      return attempt[by] ?? `no ${by} given`;
  }
}

/** By the card's number, else by date, else as given. */
function inOrder(list: readonly Attempt[]): Attempt[] {
  const numbered = list.every((a) => a.attempt !== null);
  const dated = list.every((a) => a.date !== null);
  if (numbered) return [...list].sort((a, b) => a.attempt! - b.attempt!);
  if (dated) return [...list].sort((a, b) => (a.date! < b.date! ? -1 : a.date! > b.date! ? 1 : 0));
  return [...list];
}

function referenceOf(
  attempts: readonly Attempt[],
  wanted: string | Attempt | undefined,
): { readonly attempt: Attempt; readonly why: string } | null {
  const asked = typeof wanted === 'object' ? wanted : attempts.find((a) => a.name === wanted);
  if (asked !== undefined) return { attempt: asked, why: 'as asked' };
  const best = (list: readonly Attempt[]): Attempt | null =>
    list.reduce<Attempt | null>((a, b) => {
      const [x, y] = [a?.scores.margin_m_s.value ?? null, b.scores.margin_m_s.value];
      return y !== null && (x === null || y > x) ? b : a;
    }, null);
  const found = best(attempts);
  return found === null ? null : { attempt: found, why: 'the greatest margin' };
}

/** True where all attempts flew one vehicle with one payload to one target: margins then mean the same. */
function comparable(attempts: readonly Attempt[]): boolean {
  const kinds = new Set(attempts.map((a) => JSON.stringify([a.vehicle, a.payload_kg, a.world, a.target])));
  return kinds.size <= 1;
}

function margins(attempts: readonly Attempt[]): number[] {
  return attempts.flatMap((a) => a.scores.margin_m_s.value ?? []);
}

function groupOf(name: string, attempts: readonly Attempt[]): ComparisonGroup {
  const habits = Object.fromEntries(
    habitNames.map((habit) => [habit, spread(attempts.map((a) => a.habits[habit]))]),
  ) as Record<HabitName, Spread>;
  const known = attempts.flatMap((a, k) => {
    const margin = a.scores.margin_m_s.value;
    return margin === null ? [] : [{ order: k + 1, margin }];
  });
  const alike = comparable(attempts);
  return {
    name,
    attempts: attempts.length,
    reached: attempts.filter(reached).length,
    margin: spread(attempts.map((a) => a.scores.margin_m_s.value)),
    habits,
    progress: alike
      ? progressOf(
          known.map((k) => k.order),
          known.map((k) => k.margin),
        )
      : {
          slope: null,
          low: null,
          high: null,
          confidence: 0,
          attempts: known.length,
          text: 'Different rockets, payloads or targets: margins make no trend.',
        },
    bestPhases: alike ? bestPhases(attempts) : [],
  };
}

function curvesOf(attempts: readonly Attempt[]): Comparison['curves'] {
  const end = attempts.reduce((most, a) => Math.max(most, a.curve.spent_m_s.at(-1) ?? 0), 0);
  const spent_m_s = Array.from({ length: CURVE_POINTS }, (_, k) => (end * k) / (CURVE_POINTS - 1));
  // To the decimetre a second: a chart shows no more, and a thousand curves stay small.
  const on = (a: Attempt, y: readonly (number | null)[]) =>
    spent_m_s.map((s) => {
      const value = valueAt(a.curve.spent_m_s, y, s);
      return value === null ? null : Math.round(value * 10) / 10;
    });
  return {
    spent_m_s,
    margin_m_s: attempts.map((a) => on(a, a.curve.margin_m_s)),
    total_m_s: attempts.map((a) => on(a, a.curve.total_m_s)),
  };
}

function cautionsOf(attempts: readonly Attempt[], alike: boolean): string[] {
  const out: string[] = [];
  if (!alike)
    out.push(
      'The attempts differ in vehicle, payload, world or target: margins are set side by side, but neither tested nor ranked by phase.',
    );
  const without = attempts.filter((a) => a.scores.margin_m_s.value === null).length;
  if (without > 0)
    out.push(
      `${without} of ${attempts.length} attempts ${without === 1 ? 'has' : 'have'} no margin at the end of an ascent and ${without === 1 ? 'is' : 'are'} left out of what rests on it.`,
    );
  if (attempts.length < 8)
    out.push('So few attempts show large differences only; what is not beyond chance may still be real.');
  out.push(
    'Attempts of one pilot learn from each other and are not independent draws: read p as a guide, not as a proof.',
  );
  return out;
}

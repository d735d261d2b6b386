import { type GroupBy, groupBys, type ScoreName } from '../../attempts/types.ts';
import { type BookFlight, pilotOf, vehicleOf } from '../book/types.ts';
import type { FlightSource } from '../flightSources.ts';

/** Flights that are offered under one heading. */
export interface ChoiceGroup {
  readonly heading: string;
  readonly sources: readonly FlightSource[];
}

/** Flights put together by vehicle and pilot: those of the logbook first, then opened ones, then samples. */
export function choiceGroups(
  sources: readonly FlightSource[],
  book: readonly BookFlight[],
): readonly ChoiceGroup[] {
  const kept = new Map(book.map((f) => [`book:${f.id}`, f]));
  const groups = new Map<string, FlightSource[]>();
  for (const source of sources) {
    const heading = headingOf(source, kept.get(source.id) ?? null);
    const members = groups.get(heading);
    if (members === undefined) groups.set(heading, [source]);
    else members.push(source);
  }
  return [...groups].map(([heading, members]) => ({ heading, sources: members }));
}

function headingOf(source: FlightSource, kept: BookFlight | null): string {
  if (kept !== null) return `${vehicleOf(kept) ?? 'vehicle unknown'} · ${pilotOf(kept) ?? 'pilot unknown'}`;
  if (source.origin === 'opened') return 'Opened with the page';
  // The titles of samples say vehicle and pilot before the comma.
  const [who = source.title] = source.title.split(',');
  return source.set === undefined ? `Sample · ${who}` : `Sample set “${source.set}” · ${who}`;
}

/** Most flights that the address names; a larger choice is not kept in it. */
const namedMost = 60;

export function chosenIn(view: Readonly<Record<string, string>>): readonly string[] {
  return (view.flights ?? '').split(',').filter((id) => id !== '');
}

/** As it stands in the address; null takes it out. */
export function chosenText(ids: readonly string[]): string | null {
  return ids.length === 0 || ids.length > namedMost ? null : ids.join(',');
}

/** Scores that can be columns, in their order, with their heads. */
export const scoreHeads: Readonly<Record<ScoreName, { readonly head: string; readonly unit: 'm/s' | 'kg' }>> =
  {
    margin_m_s: { head: 'margin', unit: 'm/s' },
    projectedTotal_m_s: { head: 'projected total', unit: 'm/s' },
    spent_m_s: { head: 'spent', unit: 'm/s' },
    toGo_m_s: { head: 'to go', unit: 'm/s' },
    remaining_m_s: { head: 'remaining', unit: 'm/s' },
    gravity_m_s: { head: 'gravity', unit: 'm/s' },
    drag_m_s: { head: 'drag', unit: 'm/s' },
    steering_m_s: { head: 'steering', unit: 'm/s' },
    backPressure_m_s: { head: 'back pressure', unit: 'm/s' },
    propellantLeft_kg: { head: 'propellant left', unit: 'kg' },
  };

export const scoreNames = Object.keys(scoreHeads) as ScoreName[];

const usual: readonly ScoreName[] = [
  'margin_m_s',
  'gravity_m_s',
  'drag_m_s',
  'steering_m_s',
  'propellantLeft_kg',
];

/** Score columns that the address asks for; the usual ones where it asks for none. */
export function scoresIn(view: Readonly<Record<string, string>>): readonly ScoreName[] {
  if (view.scores === undefined) return usual;
  const asked = new Set(view.scores.split(','));
  return scoreNames.filter((s) => asked.has(s));
}

export function groupByIn(view: Readonly<Record<string, string>>): GroupBy {
  return groupBys.find((by) => by === view.by) ?? 'pilot';
}

/** Names made distinct, since an attempt is spoken of by its name. */
export function distinctNames(names: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return names.map((name) => {
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}

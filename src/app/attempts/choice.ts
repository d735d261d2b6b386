import { type GroupBy, groupBys, type ScoreName } from '../../attempts/types.ts';
import { scoreHeads } from '../../exchange/comparisonWords.ts';
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

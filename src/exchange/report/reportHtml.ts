import type { Analysis, Review } from '../../review/types.ts';
import { type ShownUnits, type UnitSetName, unitsOf } from '../../units/unitSets.ts';
import { numberText } from '../figureText.ts';
import { plainDocument } from '../plainDocument.ts';
import { unbroken } from '../sentence.ts';
import { type Drawing, draw } from './drawing.ts';
import { htmlFile } from './htmlFile.ts';
import { barSection, marginSection, orbitFigure, pathSection, stripSection } from './reportCharts.ts';
import { findingsSection, planSections, whyNotSection } from './reportFindings.ts';
import { limitSections, methodSections } from './reportNotes.ts';
import { budgetTable, burnsTable, eventsTable, ledgerTable, orbitTable, section } from './reportTables.ts';
import { wayDownSection } from './reportWayDown.ts';
import { spoken } from './spoken.ts';

/**
 * The review as one self-contained HTML file: answers first, then charts and tables, then methods and cautions. It
 * needs no network and holds no script, and its own policy forbids both; texts from log and card are escaped.
 * @param set units that lengths and speeds are written in
 */
export function reportHtml(analysis: Analysis, set: UnitSetName = 'km'): string {
  const units = unitsOf(set);
  const flown: Analysis = { ...analysis, review: plainDocument(analysis.review) };
  return htmlFile(
    `Flight report: ${flightName(flown.review)}`,
    sheet(flown, units).map((part) => spoken(part, units)),
  );
}

function sheet(analysis: Analysis, units: ShownUnits): Drawing[] {
  const { review } = analysis;
  return [
    draw(
      'header',
      { class: 'top' },
      draw('b', {}, 'lossbook'),
      draw('span', { class: 'quiet' }, 'flight report'),
    ),
    draw(
      'main',
      {},
      [
        draw(
          'p',
          { class: 'about' },
          // A line that ends between two parts ends with the dot.
          aboutFlight(review).flatMap((part, i, { length }) =>
            i === length - 1 ? [draw('span', {}, part)] : [draw('span', {}, `${part} ·`), ' '],
          ),
        ),
        draw('h1', {}, unbroken(review.verdict.text)),
        ...told(review).map((text) => draw('p', { class: 'detail' }, unbroken(text))),
        barSection(analysis, units),
        marginSection(analysis, units),
        findingsSection(review, units),
        whyNotSection(review),
        ledgerTable(review, units),
        pair(budgetTable(review, units), orbitTable(review, units)),
        burnsTable(review, units),
        ...planSections(review, units),
        pair(eventsTable(review, units), section('Orbit', 'to scale', orbitFigure(analysis, units))),
        stripSection(analysis, units),
        pathSection(analysis, units),
        wayDownSection(review, units),
        ...limitSections(review),
        ...methodSections(review),
      ].filter((part) => part !== null),
    ),
    draw(
      'footer',
      { class: 'foot' },
      review.cautions.map((text) => draw('p', {}, text)),
    ),
  ];
}

/** Two sections side by side where there is room. */
function pair(left: Drawing | null, right: Drawing | null): Drawing | null {
  if (left === null || right === null) return left ?? right;
  return draw('div', { class: 'pair' }, left, right);
}

function told({ verdict, return: way, mission }: Review): string[] {
  const down = way.code === 'not-flown' || way.code === 'not-logged' ? '' : way.text;
  return [verdict.detail, down, mission.notes ?? ''].filter((text) => text !== '');
}

function flightName({ mission, source }: Review): string {
  return (
    [mission.name, mission.vehicle, mission.pilot].filter((part) => part !== null).join(', ') || source.file
  );
}

function aboutFlight({ mission, source }: Review): string[] {
  const flight = [mission.pilot, mission.attempt === null ? null : `attempt ${mission.attempt}`];
  const parts = [
    mission.name,
    mission.world,
    mission.target,
    mission.vehicle,
    mission.payload_kg === null ? null : `${numberText(mission.payload_kg, 0)} kg aboard`,
    flight.filter((part) => part !== null).join(', '),
    mission.date,
    source.parts > 1 ? `${source.file}, flight ${source.part} of ${source.parts}` : source.file,
    source.card === null ? 'no mission card' : source.card,
    source.plan,
  ];
  return [...new Set(parts.filter((part): part is string => part !== null && part !== ''))];
}

import type { Analysis, Review } from '../../review/types.ts';
import { numberText } from '../figureText.ts';
import { plainDocument } from '../plainDocument.ts';
import { unbroken } from '../sentence.ts';
import { type Drawing, draw, drawingText } from './drawing.ts';
import { barSection, marginSection, orbitFigure, pathSection, stripSection } from './reportCharts.ts';
import { findingsSection, planSections, whyNotSection } from './reportFindings.ts';
import { limitSections, methodSections } from './reportNotes.ts';
import { reportStyle } from './reportStyle.ts';
import { budgetTable, burnsTable, eventsTable, ledgerTable, orbitTable, section } from './reportTables.ts';
import { wayDownSection } from './reportWayDown.ts';

/**
 * The review as one self-contained HTML file: answers first, then charts and tables, then methods and cautions. It
 * needs no network and holds no script, and its own policy forbids both; texts from log and card are escaped.
 */
export function reportHtml(analysis: Analysis): string {
  const flown: Analysis = { ...analysis, review: plainDocument(analysis.review) };
  const { review } = flown;
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width,initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    drawingText(draw('title', {}, `Flight report: ${flightName(review)}`)),
    `<style>${reportStyle}</style>`,
  ];
  const body = drawingText(draw('div', { class: 'sheet' }, sheet(flown)));
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.join('\n')}\n</head>\n<body>\n${body}\n</body>\n</html>\n`;
}

function sheet(analysis: Analysis): (Drawing | null)[] {
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
        draw('p', { class: 'about' }, aboutFlight(review).join(' · ')),
        draw('h1', {}, unbroken(review.verdict.text)),
        ...told(review).map((text) => draw('p', { class: 'detail' }, unbroken(text))),
        barSection(analysis),
        marginSection(analysis),
        ledgerTable(review),
        findingsSection(review),
        whyNotSection(review),
        pair(budgetTable(review), orbitTable(review)),
        burnsTable(review),
        ...planSections(review),
        pair(eventsTable(review), section('Orbit', 'to scale', orbitFigure(analysis))),
        stripSection(analysis),
        pathSection(analysis),
        wayDownSection(review),
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

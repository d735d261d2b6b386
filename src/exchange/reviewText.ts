import type { Review } from '../review/types.ts';
import { formatFigure } from '../units/figures.ts';
import { againstPlanText, wasteText } from './againstPlanText.ts';
import { budgetText, marginText } from './budgetText.ts';
import { numberText } from './figureText.ts';
import { burnsText, eventsText, findingsText, orbitText } from './flightText.ts';
import { headingText } from './headingText.ts';
import { type Inks, inks } from './inks.ts';
import { ledgerText } from './ledgerText.ts';
import { notesText, readingsText } from './logText.ts';
import { orbitWorkText } from './orbitWorkText.ts';
import { plainDocument } from './plainDocument.ts';
import { timeOrigin } from './readingText.ts';
import { textTable } from './textTable.ts';
import { unavailableTexts } from './unavailableText.ts';
import { wayDownText } from './wayDownText.ts';
import { whyNotText } from './whyNotText.ts';
import { wrapText } from './wrapText.ts';

export interface TextOptions {
  /** Characters a line may take; below 72 tables keep their width. */
  readonly width: number;
  /** True for a terminal that shows colours. */
  readonly colour: boolean;
}

/**
 * A review as text for a terminal, answers first: verdict, ledger, budget and margin, burns, orbit, events,
 * findings, then what could not be derived, what was assumed and how the log was understood. Texts from the log
 * and the card are made harmless. Ends in a line feed.
 */
export function reviewText(document: Review, { width, colour }: TextOptions): string {
  const review = plainDocument(document);
  const ink = inks(colour);
  const section = (name: string, remark: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', headingText(name, remark, ink, width), ...lines];
  const points = (texts: readonly string[]) => texts.flatMap((text) => wrapText(`· ${text}`, width, '  '));
  const { ledger, budget, orbit } = review;
  const lines = [
    ...opening(review, ink, width),
    ...section(
      whereItWent(review),
      `${numberText(ledger.start_s, 1)} s to ${numberText(ledger.end_s, 1)} s`,
      ledgerText(ledger, ink, width),
    ),
    ...section('Budget', 'at the end of the ascent', budgetText(budget, ink, width)),
    ...leading(marginText(budget, ledger.end_s, ink, width)),
    ...section(
      'What took the margin',
      `rise of the projected total from ${timeOrigin(review)}`,
      review.waste === null ? [] : wasteText(review.waste, ink, width),
    ),
    ...section('Burns', '', burnsText(review.burns, ink)),
    ...section('Orbit', atCutoff(orbit.cutoff_s), orbitText(orbit.atCutoff, ink, width)),
    ...section('Work in orbit', 'against impulses', orbitWorkText(review.orbitWork, ink, width)),
    ...section('Way down', review.return.code, wayDownText(review.return, ink, width)),
    ...section('Events', eventsRemark(review), eventsText(review.events, ink)),
    ...section(
      'Against plan',
      review.againstPlan?.plan.name ?? '',
      review.againstPlan === null ? [] : againstPlanText(review.againstPlan, ink, width),
    ),
    ...section(
      'Why not in orbit',
      'by flying it again',
      review.whyNot === null ? [] : whyNotText(review.whyNot, width),
    ),
    ...section('Findings', 'dearest first', findingsText(review.findings, ink, width)),
    ...section('Could not be derived', '', points(unavailableTexts(review))),
    ...section('Assumed', '', points(assumptions(review))),
    ...section('Where the quantities come from', '', derivation(review, ink, width)),
    ...section('How the log was understood', logRemark(review), readingsText(review.channels, ink)),
    ...section('The log itself', '', notesText(review.quality, width)),
    ...leading(review.cautions.flatMap((text) => wrapText(text, width)).map(ink.faint)),
  ];
  return `${lines.join('\n')}\n`;
}

function leading(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', ...lines];
}

function opening(review: Review, ink: Inks, width: number): string[] {
  const { mission, source, verdict } = review;
  const flown = [mission.pilot, mission.attempt === null ? null : `attempt ${mission.attempt}`];
  const about = [
    source.parts > 1 ? `${source.file}, flight ${source.part} of ${source.parts}` : source.file,
    source.card === null ? 'no mission card' : source.card,
    mission.name,
    mission.world,
    mission.target,
    mission.vehicle,
    mission.payload_kg === null ? null : `${numberText(mission.payload_kg, 0)} kg aboard`,
    flown.filter((part) => part !== null).join(', '),
    mission.date,
  ].filter((part): part is string => part !== null && part !== '');
  const told = [verdict.detail, toldReturn(review)].filter((text) => text !== '');
  return [
    ...wrapText([...new Set(about)].join(' · '), width).map(ink.faint),
    '',
    ...wrapText(verdict.text, width).map(ink.strong),
    ...told.flatMap((text) => wrapText(text, width)),
  ];
}

function toldReturn({ return: way }: Review): string {
  return way.code === 'not-flown' || way.code === 'not-logged' ? '' : way.text;
}

function whereItWent({ ledger }: Review): string {
  const { value } = ledger.ground.ideal;
  return value === null ? 'Where the delta-v went' : `Where ${numberText(value, 0)} m/s went`;
}

function atCutoff(cutoff_s: number | null): string {
  return cutoff_s === null ? '' : `at cutoff, ${numberText(cutoff_s, 1)} s`;
}

function assumptions({ mission, ledger }: Review): string[] {
  return ledger.headingReading === null ? [...mission.assumed] : [...mission.assumed, ledger.headingReading];
}

function derivation(review: Review, ink: Inks, width: number): string[] {
  const heads = textTable(
    [{ align: 'left' }, { align: 'left' }],
    review.derivation.map((d) => [d.quantity, d.basis]),
  );
  const column = Math.max(0, ...heads.map((head) => head.length)) + 2;
  return review.derivation.flatMap((d, i) => {
    const head = (heads[i] ?? '').padEnd(column);
    const lines = wrapText(d.how, Math.max(24, width - column));
    return (lines.length === 0 ? [''] : lines).map((line, n) => {
      return (n === 0 ? head + ink.faint(line) : ' '.repeat(column) + ink.faint(line)).trimEnd();
    });
  });
}

function logRemark({ source }: Review): string {
  const rate = numberText(source.rate_Hz, source.rate_Hz < 9.95 ? 1 : 0);
  return `${numberText(source.rows, 0)} rows, ${rate} Hz`;
}

/** Times are from lift-off; where the log counts otherwise its own time of it is told. */
function eventsRemark(review: Review): string {
  const { source } = review;
  const own = source.liftOffLogTime_s;
  const at = Math.abs(own) < 0.05 ? '' : `, ${formatFigure(own, { decimals: 1 })} s of the log`;
  return `times in s from ${timeOrigin(review)}${at}`;
}

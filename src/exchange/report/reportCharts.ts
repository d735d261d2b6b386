import type { Analysis, StripName } from '../../review/types.ts';
import type { ShownUnits } from '../../units/unitSets.ts';
import { readingText, timeText } from '../readingText.ts';
import { sentence } from '../sentence.ts';
import { type Drawing, draw } from './drawing.ts';
import { ascentSpan } from './flightSpan.ts';
import { bandText, heroCurve } from './heroCurve.ts';
import { curveTimes, inUnit, overlayTimes, wasteTimes } from './inUnit.ts';
import { ledgerParts } from './ledgerParts.ts';
import { lineChart } from './lineChart.ts';
import { marginChart } from './marginChart.ts';
import { orbitChart, orbitView } from './orbitChart.ts';
import { hasPath, pathChart } from './pathChart.ts';
import { planOverlay } from './planOverlay.ts';
import { type PlotFrame, plotFrame } from './plotFrame.ts';
import { section } from './reportTables.ts';
import { ribbonChart, shownCauses } from './ribbonChart.ts';
import { type FlightStrip, flightStrips } from './stripList.ts';
import { timeBar } from './timeBar.ts';

/** Widths that charts are drawn for, px: a sheet of paper or a screen, and a phone. */
const widths = { wide: 840, narrow: 358 } as const;
type Width = keyof typeof widths;

/** A chart drawn for both widths, of which the style sheet shows one; null where there is nothing to draw. */
export function drawnTwice(chart: (frame: PlotFrame, which: Width) => Drawing | null): Drawing | null {
  const both = (Object.keys(widths) as Width[]).flatMap((which) => {
    const drawing = chart(plotFrame(widths[which]), which);
    return drawing === null ? [] : [draw('div', { class: which }, drawing)];
  });
  return both.length === 0 ? null : draw('div', { class: 'chart' }, both);
}

/** The ideal delta-v as one bar, split into where it went. */
export function barSection({ review }: Analysis, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  const { ground, end_s } = review.ledger;
  const { taken, given } = ledgerParts(ground);
  if (ground.ideal.value === null || taken.length === 0) return null;
  const words = (p: (typeof taken)[number]) => `${p.cause.label} ${readingText(p.value_m_s * speed.scale)}`;
  const pieces = taken.map((p) =>
    draw(
      'span',
      { class: p.cause.swatch, style: `flex:${Math.max(p.share, 1e-6).toFixed(6)} 1 0` },
      // The style hides a label that its piece has no room for.
      draw('i', {}, words(p)),
    ),
  );
  const labels = [...taken, ...given].map((p) =>
    draw('li', {}, draw('span', { class: `swatch ${p.cause.swatch}` }), words(p)),
  );
  return section(
    `Where ${readingText(ground.ideal.value * speed.scale)} ${speed.unit} went`,
    `ground frame, to ${timeText(end_s)}; figures in ${speed.unit}`,
    draw('div', { class: 'bar', 'aria-hidden': 'true' }, pieces),
    draw('ul', { class: 'labels' }, labels),
  );
}

/** The margin with the zero line, phases, events, the lost moment and what it was lost to. */
export function marginSection(analysis: Analysis, units: ShownUnits): Drawing | null {
  const { review } = analysis;
  const { unit, scale } = units.shownIn('m/s', 1);
  const told = heroCurve(review);
  const curve = told === null ? null : curveTimes(told, scale);
  const span = ascentSpan(analysis);
  const { lostAt_s } = review.budget;
  const overlays = planOverlay(analysis).map((o) => overlayTimes(o, scale));
  const waste = review.waste === null ? null : wasteTimes(review.waste, scale);
  const named = (text: string) => text.replaceAll('m/s', unit);
  const band = curve === null ? null : bandText(curve);
  const shownHere = waste === null ? [] : shownCauses(waste);
  const legend = shownHere.map(({ label, colour }) =>
    draw('li', {}, draw('span', { class: 'swatch', style: `background:${colour}` }), label),
  );
  return section(
    curve?.title ?? 'Time',
    named(curve?.note ?? 's from lift-off'),
    curve?.instead ? draw('p', { class: 'under' }, sentence(curve.instead)) : null,
    curve === null
      ? null
      : drawnTwice((frame, which) => {
          const chart = marginChart({
            id: `margin-${which}`,
            curve,
            lostAt_s,
            span,
            frame,
            height: frame.narrow ? 230 : 270,
            overlays,
            framed: null,
          });
          return inUnit(chart, unit);
        }),
    drawnTwice((frame) => timeBar(review, span, frame)),
    band === null ? null : draw('p', { class: 'under' }, sentence(named(band))),
    waste === null || legend.length === 0
      ? null
      : [
          draw('h3', {}, '…lost to ', draw('span', { class: 'quiet' }, `${unit} each second`)),
          drawnTwice((frame) =>
            inUnit(
              ribbonChart({ waste, span, frame, height: frame.narrow ? 84 : 78, lostAt_s, framed: null }),
              unit,
            ),
          ),
          draw('ul', { class: 'labels' }, legend),
        ],
  );
}

/** Strips of the report, by the line that each is known by. */
const reported: readonly StripName[] = [
  'altitude_m',
  'speed_m_s',
  'pitch_deg',
  'flightPathAngle_deg',
  'dynamicPressure_Pa',
  'thrustToWeight',
  'gravityLossRate_m_s2',
];

/** Strips of what the flight did, on one time axis. */
export function stripSection(analysis: Analysis, units: ShownUnits): Drawing | null {
  const { review, strips } = analysis;
  const span = ascentSpan(analysis);
  const shown = flightStrips(strips)
    .filter(({ lines }) => lines.some((l) => reported.includes(l.name)))
    .map((strip) => ({ ...strip, ...units.shownIn(strip.unit, strip.scale, 'chart') }));
  const overlays = planOverlay(analysis);
  return section(
    'The flight',
    `time in s from lift-off${overlays.length === 0 ? '' : '; dotted: as planned'}`,
    shown.flatMap((strip, i) => [
      stripHead(strip),
      drawnTwice((frame, which) =>
        lineChart({
          id: `strip-${i}-${which}`,
          strip,
          time_s: strips.time_s,
          phases: review.phases,
          lostAt_s: review.budget.lostAt_s,
          overlays,
          span,
          frame,
          log: false,
          axis: i === shown.length - 1,
          framed: null,
          titled: false,
        }),
      ),
    ]),
  );
}

/** A strip's title and, where it takes more than that, which line is which. */
function stripHead({ title, unit, named, lines }: FlightStrip): Drawing {
  const key = lines.map((line) => {
    const look = { class: line.dashed ? 'line dashed' : 'line', style: `border-color:var(${line.colour})` };
    return draw('li', {}, draw('span', look), line.label);
  });
  return draw(
    'div',
    { class: 'strip-head' },
    draw('h3', {}, title, draw('span', { class: 'quiet' }, ` ${unit}`.trimEnd())),
    named ? draw('ul', { class: 'labels' }, key) : null,
  );
}

/** Altitude against downrange. */
export function pathSection(analysis: Analysis, units: ShownUnits): Drawing | null {
  if (!hasPath(analysis)) return null;
  const length = units.shownIn('km', 1e-3, 'chart');
  return section(
    'Path',
    `altitude against downrange, ${length.unit}`,
    drawnTwice((frame) =>
      pathChart({
        analysis,
        overlays: planOverlay(analysis),
        span: ascentSpan(analysis),
        frame,
        height: frame.narrow ? 220 : 250,
        at_s: null,
        framed: null,
        units: { length, speed: units.shownIn('m/s', 1) },
      }),
    ),
  );
}

/** The achieved orbit, target, air and surface to scale, and what the lines are. */
export function orbitFigure(analysis: Analysis, units: ShownUnits): Drawing | null {
  const view = orbitView(analysis);
  if (view === null) return null;
  const about = [
    'solid: the conic at the end of the ascent, dotted below the ground',
    ...(view.target === null ? [] : ['dashed: the target orbit']),
    'heavy: the flown ascent, lift-off on top',
  ];
  return draw(
    'figure',
    { class: 'chart orbit' },
    orbitChart(view, 340, 'orbit', units.shownIn('km', 1e-3)),
    draw('figcaption', { class: 'under' }, sentence(about.join('; '))),
  );
}

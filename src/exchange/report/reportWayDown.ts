import type { Figure, Review } from '../../review/types.ts';
import type { PeakFigure, WayDownReview } from '../../review/wayDown/types.ts';
import type { ShownUnits } from '../../units/unitSets.ts';
import { intervalText, shown, valueText } from '../figureText.ts';
import { timeText } from '../readingText.ts';
import { type Drawing, draw } from './drawing.ts';
import { section, table } from './reportTables.ts';

/** A figure of the way down: name, figure, scale to the unit shown, unit, and when it was reached. */
type Line = readonly [name: string, figure: Figure, scale: number, unit: string, at_s: number | null];

/** The way back down as far as the log shows it; null where it shows nothing of it. */
export function wayDownSection({ return: way }: Review, units: ShownUnits): Drawing | null {
  const known = linesOf(way).filter(([, figure]) => figure.value !== null);
  if (known.length === 0) return null;
  return section(
    'Way down',
    way.touchdown_s === null ? '' : `touchdown at ${timeText(way.touchdown_s)}`,
    draw('p', { class: 'under' }, way.text),
    table(
      [
        { head: '', class: '' },
        { head: '', class: 'number' },
        { head: '', class: 'quiet' },
        { head: '95 %', class: 'number quiet more' },
        { head: 'at', class: 'number quiet more' },
        { head: 'basis', class: 'quiet more' },
      ],
      known.map(([name, figure, inSI, given, at_s]) => {
        const { unit, scale } = units.shownIn(given, inSI);
        const form = shown(figure, scale);
        const at = at_s === null ? '' : timeText(at_s);
        return [name, valueText(figure, form), unit, intervalText(figure, form), at, figure.basis];
      }),
    ),
  );
}

function linesOf(way: WayDownReview): Line[] {
  const { deorbit, impact, entry, parachute, descent, poweredLanding } = way;
  return [
    ...part(deorbit, (d) => [
      ['deorbit burn', d.deltaV_m_s, 1, 'm/s', d.start_s],
      ['periapsis after it', d.periapsisAfter_m, 1e-3, 'km', d.end_s],
      ['one impulse at apoapsis would take', d.optimum_m_s, 1, 'm/s', null],
    ]),
    ...part(entry, (e) => [
      ['speed at entry', e.speed_m_s, 1, 'm/s', e.start_s],
      ['angle of entry under the horizontal', e.angle_deg, 1, '°', e.start_s],
      peak('peak deceleration', e.peakDeceleration_m_s2, 1, 'm/s²'),
      peak('peak dynamic pressure', e.peakDynamicPressure_Pa, 1e-3, 'kPa'),
      peak('peak stagnation heating (Sutton and Graves)', e.peakHeatFlux_W_m2, 1e-3, 'kW/m²'),
      ['heat load', e.heatLoad_J_m2, 1e-6, 'MJ/m²', null],
      ['ballistic coefficient', e.ballisticCoefficient_kg_m2, 1, 'kg/m²', null],
    ]),
    ...part(parachute, (p) => [
      ['parachutes opened at', p.openAltitude_m, 1e-3, 'km', p.open_s],
      ['speed then', p.openSpeed_m_s, 1, 'm/s', p.open_s],
      ['parachutes full at', p.fullAltitude_m, 1e-3, 'km', p.full_s],
      peak('peak load of opening', p.peakLoad_m_s2, 1, 'm/s²'),
      ['drag area under them', p.dragArea_m2, 1, 'm²', null],
    ]),
    ...part(descent, (d) => [
      ['rate of descent', d.rate_m_s, 1, 'm/s', null],
      ['expected by the card', d.expected_m_s, 1, 'm/s', null],
    ]),
    ...part(poweredLanding, (l) => [
      ['landing burn', l.deltaV_m_s, 1, 'm/s', l.start_s],
      ['gravity loss of it', l.gravityLoss_m_s, 1, 'm/s', null],
    ]),
    ...part(impact, (i) => [
      ['down later than predicted by', i.missTime_s, 1, 's', i.logged.time_s],
      ['away from the predicted place by', i.missDistance_m, 1e-3, 'km', i.logged.time_s],
    ]),
    ['speed at touchdown', way.touchdownSpeed_m_s, 1, 'm/s', way.touchdown_s],
  ];
}

function part<T>(known: T | null, lines: (known: T) => Line[]): Line[] {
  return known === null ? [] : lines(known);
}

function peak(name: string, { figure, time_s }: PeakFigure, scale: number, unit: string): Line {
  return [name, figure, scale, unit, time_s];
}

import type { Figure } from '../review/types.ts';
import type { PeakFigure, WayDownReview } from '../review/wayDown/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { intervalText, numberText, type Shown, shown, valueText } from './figureText.ts';
import type { Inks } from './inks.ts';
import { textTable } from './textTable.ts';
import { cutText } from './wrapText.ts';

type Row = readonly [name: string, value: string, unit: string, interval: string, remark: string];

/** The way down's figures, one a line; empty where nothing came down. */
export function wayDownText(way: WayDownReview, ink: Inks, width: number): string[] {
  const rows: Row[] = [
    ...deorbitRows(way),
    ...impactRows(way),
    ...entryRows(way),
    ...parachuteRows(way),
    ...landingRows(way),
  ];
  if (rows.length === 0) return [];
  const lines = textTable(
    [
      { align: 'left' },
      { align: 'point', ink: ink.strong },
      { align: 'left' },
      { align: 'left', ink: ink.faint },
      { align: 'left', ink: ink.faint },
    ],
    rows.map((row) => [...row]),
  );
  return lines.map((line) => (line.includes('\u001b') ? line : cutText(line, width)));
}

function row(name: string, figure: Figure, unit: string, remark = '', form: Shown = shown(figure)): Row {
  return [name, valueText(figure, form), unit, intervalText(figure, form), remark];
}

function when(peak: PeakFigure): string {
  return `at ${numberText(peak.time_s, 0)} s, ${numberText(peak.altitude_m / 1000, 1)} km`;
}

function deorbitRows({ deorbit }: WayDownReview): Row[] {
  if (deorbit === null) return [];
  const km = { scale: 1e-3, decimals: 1 };
  return [
    row('deorbit burn', deorbit.deltaV_m_s, 'm/s', `at ${numberText(deorbit.start_s, 0)} s`),
    row('  needed at apoapsis', deorbit.optimum_m_s, 'm/s'),
    row(
      '  periapsis after',
      deorbit.periapsisAfter_m,
      'km',
      `from ${valueText(deorbit.periapsisBefore_m, km)}`,
      km,
    ),
  ];
}

const untils: Readonly<Record<string, string>> = {
  ground: 'at the ground',
  'parachute-open': 'where the parachutes open',
  burn: 'where the next burn begins',
  'end of the log': 'where the log ends',
};

function impactRows({ impact }: WayDownReview): Row[] {
  if (impact === null) return [];
  const drag = impact.drag === 'none' ? 'without drag' : `drag ${impact.drag}`;
  return [
    row('fall predicted', impact.predicted.time_s, 's', untils[impact.until] ?? ''),
    row('  logged later by', impact.missTime_s, 's', drag, { scale: 1, decimals: 1 }),
    ...(impact.missDistance_m.value === null
      ? []
      : [
          row('  logged away by', impact.missDistance_m, 'km', '', {
            scale: 1e-3,
            decimals: impact.missDistance_m.value < 1e4 ? 2 : 0,
          }),
        ]),
  ];
}

function entryRows({ entry }: WayDownReview): Row[] {
  if (entry === null) return [];
  const g = { scale: 1 / STANDARD_GRAVITY_M_S2, decimals: 2 };
  const heat = entry.peakHeatFlux_W_m2;
  return [
    row('entry', entry.speed_m_s, 'm/s', `at ${numberText(entry.start_s, 0)} s`),
    row('  under the horizontal', entry.angle_deg, '°', '', { scale: 1, decimals: 2 }),
    row('  peak deceleration', entry.peakDeceleration_m_s2.figure, 'g', when(entry.peakDeceleration_m_s2), g),
    ...(entry.allenEggers_m_s2.value === null
      ? []
      : [row('  of a straight path', entry.allenEggers_m_s2, 'g', 'Allen & Eggers', g)]),
    row(
      '  peak dynamic pressure',
      entry.peakDynamicPressure_Pa.figure,
      'kPa',
      when(entry.peakDynamicPressure_Pa),
      {
        scale: 1e-3,
        decimals: 1,
      },
    ),
    row(
      '  peak heat flux',
      heat.figure,
      heat.figure.value === null ? '' : 'kW/m²',
      `${when(heat)}${heat.figure.value === null ? '' : `, nose ${numberText(entry.noseRadius_m, 2)} m`}`,
      { scale: 1e-3, decimals: 0 },
    ),
    row(
      '  ballistic coefficient',
      entry.ballisticCoefficient_kg_m2,
      'kg/m²',
      entry.cardBallisticCoefficient_kg_m2 === null
        ? ''
        : `card ${numberText(entry.cardBallisticCoefficient_kg_m2, 0)}`,
    ),
  ];
}

function parachuteRows({ parachute }: WayDownReview): Row[] {
  if (parachute === null) return [];
  const planned = (height: number | null) => (height === null ? '' : `card ${numberText(height, 0)}`);
  const opening: Row[] = parachute.openedBefore
    ? [['parachute', '', '', '', 'out before the air could be felt']]
    : [
        row('parachute opens', parachute.openAltitude_m, 'm', planned(parachute.plannedOpenAltitude_m)),
        row('  at', parachute.openSpeed_m_s, 'm/s', `at ${numberText(parachute.open_s, 0)} s`),
        row('  full', parachute.fullAltitude_m, 'm', planned(parachute.plannedFullAltitude_m)),
      ];
  return [
    ...opening,
    row('  peak load', parachute.peakLoad_m_s2.figure, 'g', when(parachute.peakLoad_m_s2), {
      scale: 1 / STANDARD_GRAVITY_M_S2,
      decimals: 1,
    }),
    row('  drag area', parachute.dragArea_m2, 'm²'),
  ];
}

function landingRows({ descent, poweredLanding, touchdownSpeed_m_s, touchdown_s }: WayDownReview): Row[] {
  return [
    ...(descent === null
      ? []
      : [
          row(
            'rate of descent',
            descent.rate_m_s,
            'm/s',
            descent.expected_m_s.value === null
              ? ''
              : `card ${valueText(descent.expected_m_s, { scale: 1, decimals: 1 })}`,
          ),
        ]),
    ...(poweredLanding === null
      ? []
      : [
          row('landing burn', poweredLanding.speedLost_m_s, 'm/s', 'taken off'),
          row('  gravity put back', poweredLanding.gravityLoss_m_s, 'm/s'),
          row(
            '  of it hovering',
            poweredLanding.hoverLoss_m_s,
            'm/s',
            `${numberText(poweredLanding.hover_s, 1)} s`,
          ),
        ]),
    ...(touchdown_s === null
      ? []
      : [row('touchdown', touchdownSpeed_m_s, 'm/s', `at ${numberText(touchdown_s, 0)} s`)]),
  ];
}

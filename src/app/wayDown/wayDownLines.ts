import { numberText, valueText } from '../../exchange/figureText.ts';
import type { PeakFigure, WayDownReview } from '../../review/wayDown/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import { timeText } from '../figureText.ts';
import type { FigureLine } from '../parts/FigureTable.tsx';
import { altitudeIn, inUnits, speedIn } from '../units.ts';

/** A section of the way down: its figures, and a sentence about them where one is needed. */
export interface WayDownSection {
  readonly title: string;
  readonly note: string;
  readonly lines: readonly FigureLine[];
}

const perG = 1 / STANDARD_GRAVITY_M_S2;

function placeText(peak: PeakFigure): string {
  return inUnits(`at ${timeText(peak.time_s)}, ${numberText(peak.altitude_m / 1000, 1)} km`);
}

function peakLine(
  label: string,
  peak: PeakFigure,
  unit: string,
  scale: number,
  decimals: number,
): FigureLine {
  const note = peak.figure.value === null ? '' : placeText(peak);
  return { label, figure: peak.figure, unit, scale, decimals, note, reasoned: true };
}

const untils: Readonly<Record<NonNullable<WayDownReview['impact']>['until'], string>> = {
  ground: 'to the ground',
  'parachute-open': 'to where the parachutes open',
  burn: 'to where the next burn begins',
  'end of the log': 'to where the log ends',
};

function deorbit({ deorbit: d }: WayDownReview): WayDownSection | null {
  if (d === null) return null;
  const { scale, unit } = altitudeIn();
  const before = `from ${valueText(d.periapsisBefore_m, { scale, decimals: 1 })} ${unit}`;
  return {
    title: 'Deorbit burn',
    note: `${timeText(d.start_s)} to ${timeText(d.end_s)}`,
    lines: [
      { label: 'delta-v', figure: d.deltaV_m_s, unit: 'm/s', reasoned: true },
      {
        label: 'one impulse at apoapsis',
        figure: d.optimum_m_s,
        unit: 'm/s',
        note: 'to the same periapsis',
        reasoned: true,
      },
      {
        label: 'periapsis after it',
        figure: d.periapsisAfter_m,
        unit: 'km',
        scale: 1e-3,
        note: before,
        reasoned: true,
      },
      {
        label: `periapsis lowered for each ${speedIn().unit}`,
        figure: d.perDeltaV_m_per_m_s,
        unit: 'km',
        scale: 1e-3 / speedIn().scale,
        decimals: 2,
        reasoned: true,
      },
    ],
  };
}

function impact({ impact: i }: WayDownReview): WayDownSection | null {
  if (i === null) return null;
  const drag = i.drag === 'none' ? 'without drag' : `with drag ${i.drag}`;
  const place = (value: number | null) => (value === null ? 'not logged' : `logged ${numberText(value, 3)}`);
  const miss_m = i.missDistance_m.value;
  return {
    title: 'Fall predicted and logged',
    note: `from the state at ${timeText(i.from_s)} ${untils[i.until]}, ${drag}`,
    lines: [
      {
        label: 'time predicted',
        figure: i.predicted.time_s,
        unit: 's',
        decimals: 1,
        note: `logged ${numberText(i.logged.time_s, 1)}`,
        reasoned: true,
      },
      {
        label: 'latitude predicted',
        figure: i.predicted.latitude_deg,
        unit: '°',
        decimals: 3,
        note: place(i.logged.latitude_deg),
        reasoned: true,
      },
      {
        label: 'longitude predicted',
        figure: i.predicted.longitude_deg,
        unit: '°',
        decimals: 3,
        note: place(i.logged.longitude_deg),
        reasoned: true,
      },
      { label: 'logged later by', figure: i.missTime_s, unit: 's', decimals: 1, reasoned: true },
      {
        label: 'logged away by',
        figure: i.missDistance_m,
        unit: 'km',
        scale: 1e-3,
        decimals: miss_m !== null && miss_m > 1e4 ? 0 : 2,
        reasoned: true,
      },
    ],
  };
}

function entry({ entry: e }: WayDownReview): WayDownSection | null {
  if (e === null) return null;
  const nose = e.noseRadius_m === null ? '' : `nose ${numberText(e.noseRadius_m, 2)} m`;
  const card = e.cardBallisticCoefficient_kg_m2;
  return {
    title: 'Entry',
    note: `${timeText(e.start_s)} to ${timeText(e.end_s)}`,
    lines: [
      { label: 'speed at entry', figure: e.speed_m_s, unit: 'm/s', reasoned: true },
      {
        label: 'angle under the horizontal',
        figure: e.angle_deg,
        unit: '°',
        decimals: 2,
        reasoned: true,
      },
      peakLine('peak deceleration', e.peakDeceleration_m_s2, 'g', perG, 2),
      {
        label: 'on a straight path',
        figure: e.allenEggers_m_s2,
        unit: 'g',
        scale: perG,
        decimals: 2,
        note: 'Allen & Eggers',
        reasoned: true,
      },
      peakLine('peak dynamic pressure', e.peakDynamicPressure_Pa, 'kPa', 1e-3, 1),
      peakLine('peak heat flux', e.peakHeatFlux_W_m2, 'kW/m²', 1e-3, 0),
      {
        label: 'heat load',
        figure: e.heatLoad_J_m2,
        unit: 'MJ/m²',
        scale: 1e-6,
        decimals: 2,
        note: nose,
        reasoned: true,
      },
      {
        label: 'ballistic coefficient',
        figure: e.ballisticCoefficient_kg_m2,
        unit: 'kg/m²',
        note: card === null ? '' : `card ${numberText(card, 0)}`,
        reasoned: true,
      },
    ],
  };
}

function parachutes({ parachute: p }: WayDownReview): WayDownSection | null {
  if (p === null) return null;
  const planned = (height_m: number | null) =>
    height_m === null ? '' : inUnits(`card ${numberText(height_m / 1000, 2)} km`);
  const opening: FigureLine[] = p.openedBefore
    ? []
    : [
        {
          label: 'opened at',
          figure: p.openAltitude_m,
          unit: 'km',
          scale: 1e-3,
          decimals: 2,
          note: planned(p.plannedOpenAltitude_m),
          reasoned: true,
        },
        { label: 'speed then', figure: p.openSpeed_m_s, unit: 'm/s', reasoned: true },
        {
          label: 'dynamic pressure then',
          figure: p.openDynamicPressure_Pa,
          unit: 'kPa',
          scale: 1e-3,
          decimals: 2,
          reasoned: true,
        },
        {
          label: 'full at',
          figure: p.fullAltitude_m,
          unit: 'km',
          scale: 1e-3,
          decimals: 2,
          note: planned(p.plannedFullAltitude_m),
          reasoned: true,
        },
      ];
  const unfilled = p.inflation === 'partial' ? 'never full' : 'whether they filled cannot be told';
  const full = p.full_s === null ? unfilled : `full at ${timeText(p.full_s)}`;
  return {
    title: 'Parachutes',
    note: p.openedBefore
      ? 'out before the air could be felt: no figures of their opening'
      : `opened at ${timeText(p.open_s)}, ${full}`,
    lines: [
      ...opening,
      peakLine('peak load', p.peakLoad_m_s2, 'g', perG, 1),
      { label: 'drag area under them', figure: p.dragArea_m2, unit: 'm²', reasoned: true },
    ],
  };
}

function landing(way: WayDownReview): WayDownSection | null {
  const { descent, poweredLanding: burn, touchdown_s, touchdownSpeed_m_s } = way;
  if (descent === null && burn === null && touchdown_s === null) return null;
  return {
    title: 'Landing',
    note: touchdown_s === null ? 'the log ends before it' : `touchdown at ${timeText(touchdown_s)}`,
    lines: [
      ...(descent === null
        ? []
        : [
            {
              label: 'rate of descent',
              figure: descent.rate_m_s,
              unit: 'm/s',
              decimals: 1,
              note: inUnits(`at ${numberText(descent.altitude_m / 1000, 2)} km`),
              reasoned: true,
            },
            {
              label: 'expected of the card',
              figure: descent.expected_m_s,
              unit: 'm/s',
              decimals: 1,
              note: '√(2mg / ρ Cd A)',
              reasoned: true,
            },
          ]),
      ...(burn === null
        ? []
        : [
            {
              label: 'landing burn',
              figure: burn.deltaV_m_s,
              unit: 'm/s',
              note: `${timeText(burn.start_s)} to ${timeText(burn.end_s)}`,
              reasoned: true,
            },
            { label: 'speed taken off', figure: burn.speedLost_m_s, unit: 'm/s', reasoned: true },
            { label: 'gravity loss of it', figure: burn.gravityLoss_m_s, unit: 'm/s', reasoned: true },
            {
              label: 'lost hovering',
              figure: burn.hoverLoss_m_s,
              unit: 'm/s',
              note: `${numberText(burn.hover_s, 1)} s`,
              reasoned: true,
            },
          ]),
      {
        label: 'speed at touchdown',
        figure: touchdownSpeed_m_s,
        unit: 'm/s',
        decimals: 1,
        reasoned: true,
      },
    ],
  };
}

/** What the log shows of the way down, in its order; empty where nothing came down. */
export function wayDownSections(way: WayDownReview): readonly WayDownSection[] {
  return [deorbit(way), impact(way), entry(way), parachutes(way), landing(way)].filter((s) => s !== null);
}

import type { Figure, Finding, OrbitFigures, ReviewBurn, ReviewEvent } from '../review/types.ts';
import { NO_FIGURE } from '../units/figures.ts';
import { intervalText, massForm, numberText, shown, valueText } from './figureText.ts';
import type { Inks } from './inks.ts';
import { movedText } from './movedText.ts';
import { textTable } from './textTable.ts';
import { cutText, wrapText } from './wrapText.ts';

/** The burns, one a line; those after the ascent are marked. */
export function burnsText(burns: readonly ReviewBurn[], ink: Inks): string[] {
  if (burns.length === 0) return [];
  const rows = burns.map((burn) => [
    cutText(burn.ascent ? burn.stage : `${burn.stage} (after the ascent)`, 30),
    numberText(burn.start_s, 1),
    numberText(burn.end_s, 1),
    valueText(burn.deltaV, shown(burn.deltaV)),
    intervalText(burn.deltaV, shown(burn.deltaV)),
    valueText(burn.efficiency, { scale: 100, decimals: 0 }),
    valueText(burn.propellant_kg, massForm(burn.propellant_kg)),
  ]);
  return textTable(
    [
      { align: 'left' },
      { align: 'right' },
      { align: 'right' },
      { align: 'point', ink: ink.strong },
      { align: 'left', ink: ink.faint },
      { align: 'right' },
      { align: 'right' },
    ],
    [['stage', 'from s', 'to s', 'm/s', '95 %', 'useful %', 'used kg'], ...rows],
    ink.faint,
  );
}

/** The orbit's figures in the order they are shown: name, scale and unit. */
export const orbitRows: readonly (readonly [keyof OrbitFigures, string, number, string])[] = [
  ['apoapsisAltitude_m', 'apoapsis', 1e-3, 'km'],
  ['periapsisAltitude_m', 'periapsis', 1e-3, 'km'],
  ['semiMajorAxis_m', 'semi-major axis', 1e-3, 'km'],
  ['eccentricity', 'eccentricity', 1, ''],
  ['inclination_deg', 'inclination', 1, '°'],
  ['period_s', 'period', 1, 's'],
];

/** The orbit's elements, one a line, with what assumptions could move under them. */
export function orbitText(orbit: OrbitFigures, ink: Inks, width: number): string[] {
  const formed = orbitRows.map(([key, name, scale, unit]) => {
    const figure: Figure = orbit[key];
    return {
      name,
      unit,
      figure,
      form: key === 'eccentricity' ? { scale, decimals: 5 } : shown(figure, scale),
    };
  });
  const table = textTable(
    [
      { align: 'left' },
      { align: 'point', ink: ink.strong },
      { align: 'left' },
      { align: 'left', ink: ink.faint },
      { align: 'left', ink: ink.faint },
    ],
    formed.map(({ name, unit, figure, form }) => [
      name,
      valueText(figure, form),
      unit,
      intervalText(figure, form),
      figure.basis,
    ]),
  );
  const apsides = formed.slice(0, 2).map(({ name, figure, form }) => [name, figure, form] as const);
  return [...table, ...movedText(apsides, 'km', width)];
}

/** The events in time's order; a column for the plan only where there is one. */
export function eventsText(events: readonly ReviewEvent[], ink: Inks): string[] {
  if (events.length === 0) return [];
  const planned = events.some((e) => e.planned_s !== null);
  const rows = events.map((e) => [
    numberText(e.time_s, 1),
    ...(planned ? [numberText(e.planned_s, 1)] : []),
    e.name,
    cutText(e.subject ?? '', 24),
    e.altitude_m === null ? NO_FIGURE : numberText(e.altitude_m / 1000, 1),
    numberText(e.speed_m_s, 0),
  ]);
  return textTable(
    [
      { align: 'right', ink: ink.strong },
      ...(planned ? [{ align: 'right' } as const] : []),
      { align: 'left' },
      { align: 'left', ink: ink.faint },
      { align: 'right' },
      { align: 'right' },
    ],
    [['s', ...(planned ? ['planned'] : []), 'event', '', 'altitude km', 'speed m/s'], ...rows],
    ink.faint,
  );
}

function shortSpan({ start_s, end_s }: Finding): string {
  const [start, end] = [numberText(start_s, 0), numberText(end_s, 0)];
  return start === end ? `${start} s` : `${start}–${end} s`;
}

/** The findings as they come (dearest first): what, when, cost; then evidence and advice. */
export function findingsText(findings: readonly Finding[], ink: Inks, width: number): string[] {
  return findings.flatMap((finding, i) => {
    const cost = finding.cost_m_s;
    const kg = finding.propellant_kg;
    const worth = [
      shortSpan(finding),
      cost.value === null
        ? ''
        : `${valueText(cost, shown(cost))} m/s ${intervalText(cost, shown(cost))}`.trim(),
      kg.value === null ? '' : `${valueText(kg, shown(kg))} kg of propellant`,
    ].filter((part) => part !== '');
    const told = [finding.evidence, finding.advice].filter((text) => text !== '').join(' ');
    return [
      ...wrapText(`${i + 1}. ${finding.text}`, width, '   ').map(ink.strong),
      ...wrapText(worth.join(', '), width - 3).map((line) => `   ${line}`),
      ...wrapText(told, width - 3).map((line) => `   ${ink.faint(line)}`),
    ];
  });
}

import type { OrbitWork } from '../review/orbitWork/types.ts';
import { NO_FIGURE } from '../units/figures.ts';
import { numberText, shown, valueText } from './figureText.ts';
import type { Inks } from './inks.ts';
import { textTable } from './textTable.ts';
import { wrapText } from './wrapText.ts';

/** Burns in orbit weighed against impulses, one a line, with a sentence each; then the orbit's history. */
export function orbitWorkText(work: OrbitWork, ink: Inks, width: number): string[] {
  if (work.burns.length === 0) return [];
  const burns = work.burns.map((b) => [
    b.kind.replace('-', ' '),
    numberText(b.start_s, 0),
    valueText(b.deltaV_m_s, shown(b.deltaV_m_s)),
    valueText(b.optimum_m_s, shown(b.optimum_m_s)),
    valueText(b.efficiency, { scale: 100, decimals: 0 }),
    valueText(b.placeLoss_m_s, { scale: 1, decimals: 1 }),
    valueText(b.finiteBurnLoss_m_s, { scale: 1, decimals: 1 }),
    b.trueAnomaly_deg === null ? 'circle' : numberText(b.trueAnomaly_deg, 0),
    b.bestAt ?? 'anywhere',
  ]);
  const history = work.history.map((row) => [
    numberText(row.time_s, 0),
    row.after.replace('-', ' '),
    valueText(row.orbit.apoapsisAltitude_m, { scale: 1e-3, decimals: 1 }),
    valueText(row.orbit.periapsisAltitude_m, { scale: 1e-3, decimals: 1 }),
    row.orbit.inclination_deg.value === null
      ? NO_FIGURE
      : valueText(row.orbit.inclination_deg, { scale: 1, decimals: 2 }),
    valueText(row.orbit.period_s, { scale: 1, decimals: 0 }),
  ]);
  return [
    ...textTable(
      [
        { align: 'left' },
        { align: 'right' },
        { align: 'point', ink: ink.strong },
        { align: 'point' },
        { align: 'right' },
        { align: 'point' },
        { align: 'point' },
        { align: 'right', ink: ink.faint },
        { align: 'left', ink: ink.faint },
      ],
      [['', 'at s', 'm/s', 'needed', '%', 'place', 'length', 'at °', 'best at'], ...burns],
      ink.faint,
    ),
    ...work.burns.flatMap((b) => wrapText(`· ${b.text}`, width, '  ')),
    '',
    ...textTable(
      [
        { align: 'right' },
        { align: 'left' },
        { align: 'point', ink: ink.strong },
        { align: 'point', ink: ink.strong },
        { align: 'point' },
        { align: 'right' },
      ],
      [['from s', 'after', 'apoapsis km', 'periapsis km', 'inclination °', 'period s'], ...history],
      ink.faint,
    ),
  ];
}

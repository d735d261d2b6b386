import type { AgainstPlan, ComparedState, Review } from '../review/types.ts';
import { formatFigure, NO_FIGURE } from '../units/figures.ts';
import { cutoffStates } from './cutoffStates.ts';
import { intervalText, numberText, shown, valueText } from './figureText.ts';
import type { Inks } from './inks.ts';
import { textTable } from './textTable.ts';
import { cutText, wrapText } from './wrapText.ts';

/** The comparison with the plan: what was avoidable and why, events, states at each cutoff. */
export function againstPlanText(plan: AgainstPlan, ink: Inks, width: number): string[] {
  const { avoidable } = plan;
  const kg = avoidable.propellant_kg;
  const lines = [
    ...wrapText(plan.plan.text, width),
    ...wrapText(
      avoidable.deltaV_m_s.value === null
        ? 'What could have been avoided is not known.'
        : `Projected total against the plan’s: ${signed(avoidable.deltaV_m_s.value, 1)} m/s${kg.value === null ? '' : `, worth ${numberText(kg.value, 0)} kg of propellant at cutoff`}.`,
      width,
    ).map(ink.strong),
    ...plan.plan.assumed.flatMap((text) => wrapText(`· ${text}`, width, '  ')),
  ];
  return [...lines, ...contributions(plan, ink), '', ...events(plan, ink), '', ...cutoffs(plan, ink)];
}

function contributions({ contributions: parts }: AgainstPlan, ink: Inks): string[] {
  if (parts.length === 0) return [];
  return [
    '',
    ...textTable(
      [{ align: 'left' }, { align: 'point', ink: ink.strong }, { align: 'left', ink: ink.faint }],
      [
        ['made up by re-flying of', 'm/s', '95 %'],
        ...parts.map((p) => [
          p.text,
          p.deltaV_m_s.value === null ? NO_FIGURE : signed(p.deltaV_m_s.value, 1),
          intervalText(p.deltaV_m_s, shown(p.deltaV_m_s)),
        ]),
      ],
      ink.faint,
    ),
  ];
}

function events(plan: AgainstPlan, ink: Inks): string[] {
  const rows = plan.events.map((e) => [
    e.name,
    cutText(e.subject ?? '', 24),
    numberText(e.time_s.planned, 1),
    numberText(e.time_s.flown, 1),
    difference(e.time_s, 1, 1),
    difference(e.altitude_m, 1e-3, 1),
    difference(e.speed_m_s, 1, 0),
    numberText(e.mass_kg.flown, 0),
    difference(e.propellant_kg, 1, 0),
  ]);
  const right = { align: 'right' } as const;
  return textTable(
    [
      { align: 'left' },
      { align: 'left', ink: ink.faint },
      right,
      right,
      { align: 'right', ink: ink.strong },
      right,
      right,
      right,
      right,
    ],
    [['event', '', 'planned s', 'flown s', 'Δ s', 'Δ km', 'Δ m/s', 'mass kg', 'Δ prop. kg'], ...rows],
    ink.faint,
  );
}

function cutoffs(plan: AgainstPlan, ink: Inks): string[] {
  const rows = plan.cutoffs.flatMap((c) =>
    cutoffStates.map(([key, name, unit, scale, decimals], i) => {
      const state = c.states[key];
      const at = (v: number | null) => numberText(v === null ? null : v * scale, decimals);
      return [
        i === 0 ? cutText(`cutoff ${c.subject}`, 30) : '',
        name,
        at(state.planned),
        at(state.flown),
        difference(state, scale, decimals),
        unit,
      ];
    }),
  );
  const right = { align: 'right' } as const;
  return textTable(
    [
      { align: 'left', ink: ink.faint },
      { align: 'left' },
      right,
      right,
      { align: 'right', ink: ink.strong },
      { align: 'left', ink: ink.faint },
    ],
    [['', '', 'planned', 'flown', 'Δ', ''], ...rows],
    ink.faint,
  );
}

function difference(state: ComparedState, scale: number, decimals: number): string {
  return state.difference === null ? NO_FIGURE : signed(state.difference * scale, decimals);
}

function signed(value: number, decimals: number): string {
  return formatFigure(value, { decimals, signed: true });
}

const causes = [
  ['backPressure', 'back pressure'],
  ['drag', 'drag'],
  ['offDirection', 'off direction'],
  ['offTime', 'off time'],
  ['drift', 'drift'],
  ['remainder', 'remainder'],
  ['total', 'total'],
] as const;

/** What made the projected total rise, by cause, in m/s and in kg of propellant. */
export function wasteText(waste: NonNullable<Review['waste']>, ink: Inks, width: number): string[] {
  const rows = causes.map(([cause, name]) => {
    const { deltaV_m_s, propellant_kg } = waste.totals[cause];
    return [
      name,
      valueText(deltaV_m_s, shown(deltaV_m_s)),
      intervalText(deltaV_m_s, shown(deltaV_m_s)),
      valueText(propellant_kg, { scale: 1, decimals: 0 }),
    ];
  });
  return [
    ...textTable(
      [
        { align: 'left' },
        { align: 'point', ink: ink.strong },
        { align: 'left', ink: ink.faint },
        { align: 'right' },
      ],
      [['', 'm/s', '95 %', 'kg'], ...rows],
      ink.faint,
    ),
    ...wrapText(
      'The ledger says what took the speed, this split what took the margin. A faultless ascent has most of its rise off direction; only the difference from a plan or a better flight is avoidable.',
      width,
    ).map(ink.faint),
  ];
}

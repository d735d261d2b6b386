import type { Figure, Review } from '../review/types.ts';
import { NO_FIGURE } from '../units/figures.ts';
import { intervalText, numberText, shown, valueText } from './figureText.ts';
import type { Inks } from './inks.ts';
import { ledgerOrder } from './ledgerOrder.ts';
import { movedText } from './movedText.ts';
import { textTable } from './textTable.ts';

/** The ledger in both frames side by side, ground first, with what assumptions could move under it. */
export function ledgerText(ledger: Review['ledger'], ink: Inks, width: number): string[] {
  const rows = ledgerOrder.map(([key, name]) => {
    const [ground, inertial] = [ledger.ground[key], ledger.inertial[key]];
    const share = key === 'ideal' ? null : shareOf(ground, ledger.ground.ideal);
    return [
      name,
      ...cells(ground),
      share ?? '',
      valueText(inertial, shown(inertial)),
      basisOf(ground, inertial),
    ];
  });
  rows.push(['rotation’s help', ...cells(ledger.rotationHelp), '', '', basisOf(ledger.rotationHelp)]);
  const table = textTable(
    [
      { align: 'left' },
      { align: 'point', ink: ink.strong },
      { align: 'left', ink: ink.faint },
      { align: 'point' },
      { align: 'point' },
      { align: 'left', ink: ink.faint },
    ],
    [['', 'ground m/s', '95 %', 'of ideal', 'inertial m/s', 'basis'], ...rows],
    ink.faint,
  );
  const named = ledgerOrder.map(
    ([key, name]) => [name, ledger.ground[key], shown(ledger.ground[key])] as const,
  );
  return [...table, ...movedText(named, 'm/s', width)];
}

function cells(figure: Figure): [string, string] {
  return [valueText(figure, shown(figure)), intervalText(figure, shown(figure))];
}

function shareOf(figure: Figure, ideal: Figure): string {
  if (figure.value === null || ideal.value === null || ideal.value === 0) return NO_FIGURE;
  return `${numberText((figure.value / ideal.value) * 100, 1)} %`;
}

/** Basis of the figure shown; the inertial one's where the ground frame has none. */
function basisOf(figure: Figure, other: Figure = figure): string {
  return figure.value === null && other.value !== null ? `${other.basis} (inertial)` : figure.basis;
}

import { expect, test } from 'vitest';
import { shown } from '../../src/exchange/figureText.ts';
import { movedText, type NamedFigure } from '../../src/exchange/movedText.ts';
import type { Figure } from '../../src/review/types.ts';
import { figure } from './handMadeReview.ts';

function moved(value: number, low: number, high: number, what: string): Figure {
  return { ...figure(value, 2), assumptions: [{ what, low, high }] };
}
const named = (name: string, f: Figure): NamedFigure => [name, f, shown(f)];

test('figures that one assumption moves stand together; what moves by less than is shown is left out', () => {
  const figures = [
    named('steering', moved(282, 272, 282, 'wind unseen')),
    named('gravity', moved(1288, 1288, 1291, 'wind unseen')),
    named('drag', moved(87, 87.01, 87.2, 'wind unseen')),
    named('ideal', moved(5541, 5500, 5600, 'mass unseen')),
  ];
  expect(movedText(figures, 'm/s', 80)).toEqual([
    'wind unseen, could move steering −10 … +0, gravity +0 … +3 (m/s)',
    'mass unseen, could move ideal −41 … +59 (m/s)',
  ]);
});

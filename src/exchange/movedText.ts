import type { Figure } from '../review/types.ts';
import { assumptionMoves, type Shown } from './figureText.ts';
import { wrapText } from './wrapText.ts';

/** A figure with the name it has in its table. */
export type NamedFigure = readonly [name: string, figure: Figure, form: Shown];

/** What stands under a table: how far each assumption could move the figures above, beside their intervals. */
export function movedText(figures: readonly NamedFigure[], unit: string, width: number): string[] {
  const moves = new Map<string, string[]>();
  for (const [name, figure, form] of figures) {
    for (const { what, range } of assumptionMoves(figure, form)) {
      moves.set(what, [...(moves.get(what) ?? []), `${name} ${range}`]);
    }
  }
  return [...moves].flatMap(([what, which]) =>
    wrapText(`${what}, could move ${which.join(', ')} (${unit})`, width, '  '),
  );
}

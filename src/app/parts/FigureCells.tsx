import { intervalText, shown, valueText } from '../../exchange/figureText.ts';
import type { Figure } from '../../review/types.ts';

interface Props {
  readonly figure: Figure;
  readonly unit: string;
  /** Shown value = stored value × scale. */
  readonly scale?: number;
  /** Where the figure's own uncertainty should not decide. */
  readonly decimals?: number;
}

/** A figure as the cells of a table row: value, unit, interval, basis. The reasons of those without stand below. */
export function FigureCells({ figure, unit, scale = 1, decimals }: Props) {
  if (figure.value === null) {
    return (
      <td class="absent" colSpan={4}>
        not available
      </td>
    );
  }
  const form = decimals === undefined ? shown(figure, scale) : { scale, decimals };
  return (
    <>
      <td class="number">{valueText(figure, form)}</td>
      <td class="unit">{unit}</td>
      <td class="number more quiet">{intervalText(figure, form)}</td>
      <td class="more basis quiet">{figure.basis}</td>
    </>
  );
}

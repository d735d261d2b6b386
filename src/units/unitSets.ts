import { formatFigure } from './figures.ts';
import { findUnit } from './units.ts';

/** Units that lengths and speeds are shown in: a choice for a whole page or report. Saved data stay SI. */
export const unitSets = {
  km: { words: 'km, m/s', length: 'km', chart: 'km', speed: 'm/s', acceleration: 'm/s²' },
  si: { words: 'm, m/s', length: 'm', chart: 'm', speed: 'm/s', acceleration: 'm/s²' },
  ft: { words: 'ft, ft/s', length: 'ft', chart: 'kft', speed: 'ft/s', acceleration: 'ft/s²' },
  kn: { words: 'ft, kn', length: 'ft', chart: 'kft', speed: 'kn', acceleration: 'ft/s²' },
} as const;

export type UnitSetName = keyof typeof unitSets;

/** How a quantity is shown: SI value × scale, in this unit. */
export interface ShownIn {
  readonly unit: string;
  readonly scale: number;
}

/** What shows figures and sentences of the engine, which speak km, m and m/s, in the units of one set. */
export interface ShownUnits {
  readonly name: UnitSetName;
  /**
   * A unit and scale of the engine in those of the set; others stay what they are. `m/s each second` goes with `m/s`.
   * @param place altitudes on the axis of a chart have a coarser unit than in a table
   */
  readonly shownIn: (unit: string, scale: number, place?: 'length' | 'chart') => ShownIn;
  /** A sentence with its lengths, speeds and accelerations in the units of the set. */
  readonly text: (sentence: string) => string;
}

/** SI per unit, exact (NIST SP 811). */
function factor(kind: 'length' | 'speed' | 'acceleration', spelling: string): number {
  return findUnit(kind, spelling.replace('²', '2'))?.factor ?? 1;
}

const number = '[−-]?\\d[\\d,]*(?:\\.\\d+)?';
const unit = 'km|m/s²|m/s|m';
const figures = new RegExp(
  `(${number})((?:\\s×\\s|…|\\sto\\s|\\sand\\s)(?=${number}\\s(?:${unit})(?![\\w²³/])))?(${number})?(\\s)(${unit})(?![\\w²³/])`,
  'gu',
);

export function unitsOf(name: UnitSetName): ShownUnits {
  const set = unitSets[name];
  /** What takes the place of a unit that the engine writes, and how many of it one of those are. */
  const instead = (given: string, place: 'length' | 'chart'): { unit: string; each: number } | null => {
    const kind =
      given === 'm/s²'
        ? 'acceleration'
        : given === 'm/s'
          ? 'speed'
          : given === 'km' || given === 'm'
            ? 'length'
            : null;
    if (kind === null) return null;
    // Small lengths stay metres where large ones are kilometres.
    const wanted = kind !== 'length' ? set[kind] : set.length === 'km' && given === 'm' ? 'm' : set[place];
    return wanted === given ? null : { unit: wanted, each: factor(kind, given) / factor(kind, wanted) };
  };
  return {
    name,
    shownIn: (given, scale, place = 'length') => {
      const [, head = '', tail = ''] =
        /^(km|m\/s²|m\/s|m)(| each second.*|,.*| that .*| still .*)$/u.exec(given) ?? [];
      const other = instead(head, place);
      return other === null
        ? { unit: given, scale }
        : { unit: `${other.unit}${tail}`, scale: scale * other.each };
    },
    text: (sentence) =>
      name === 'km'
        ? sentence
        : sentence.replace(
            figures,
            (
              whole,
              first: string,
              join: string | undefined,
              second: string | undefined,
              gap: string,
              given: string,
            ) => {
              const other = instead(given, 'length');
              if (other === null || (second !== undefined && join === undefined)) return whole;
              const convert = (figure: string) => {
                const value = Number(figure.replaceAll(',', '').replace('−', '-'));
                const digits = figure.split('.')[1]?.length ?? 0;
                const decimals = Math.max(0, digits - Math.round(Math.log10(other.each)));
                return formatFigure(value * other.each, {
                  decimals: other.each > 100 ? 0 : Math.min(decimals, 2),
                });
              };
              const rest = second === undefined ? '' : `${join}${convert(second)}`;
              return `${convert(first)}${rest}${gap}${other.unit}`;
            },
          ),
  };
}

import { signal } from '@preact/signals';
import { formatFigure } from '../units/figures.ts';
import { findUnit } from '../units/units.ts';

/** Units that figures are shown in: a choice for the whole page. Files that are saved stay SI. */
export const unitSets = {
  km: { words: 'km, m/s', length: 'km', chart: 'km', speed: 'm/s' },
  si: { words: 'm, m/s', length: 'm', chart: 'm', speed: 'm/s' },
  ft: { words: 'ft, ft/s', length: 'ft', chart: 'kft', speed: 'ft/s' },
  kn: { words: 'ft, kn', length: 'ft', chart: 'kft', speed: 'kn' },
} as const;

export type UnitSetName = keyof typeof unitSets;

const kept = 'lossbook-units';

function keptSet(): UnitSetName {
  try {
    const name = localStorage.getItem(kept);
    return name !== null && Object.hasOwn(unitSets, name) ? (name as UnitSetName) : 'km';
  } catch {
    return 'km';
  }
}

export const unitSet = signal<UnitSetName>(keptSet());

export function chooseUnits(name: UnitSetName): void {
  unitSet.value = name;
  try {
    localStorage.setItem(kept, name);
  } catch {
    // A browser that keeps nothing still shows them for this visit.
  }
}

/** How a quantity is shown: SI value × scale, in this unit. */
export interface ShownIn {
  readonly unit: string;
  readonly scale: number;
}

/** SI per unit, exact (NIST SP 811). */
function factor(kind: 'length' | 'speed', spelling: string): number {
  return findUnit(kind, spelling)?.factor ?? 1;
}

/** What takes the place of a unit that the engine writes, and how many of it one of those are. */
function instead(unit: string, place: 'length' | 'chart'): { unit: string; each: number } | null {
  const set = unitSets[unitSet.value];
  const kind = unit === 'm/s' ? 'speed' : unit === 'km' || unit === 'm' ? 'length' : null;
  if (kind === null) return null;
  // Small lengths stay metres where large ones are kilometres.
  const wanted = kind === 'speed' ? set.speed : set.length === 'km' && unit === 'm' ? 'm' : set[place];
  return wanted === unit ? null : { unit: wanted, each: factor(kind, unit) / factor(kind, wanted) };
}

/**
 * A unit and scale of the engine in the units chosen; others stay what they are. `m/s each second` goes with `m/s`.
 * @param place altitudes on the axis of a chart have a coarser unit than in a table
 */
export function shownIn(unit: string, scale: number, place: 'length' | 'chart' = 'length'): ShownIn {
  const [, head = '', tail = ''] = /^(km|m\/s|m)(| each second.*|,.*| that .*| still .*)$/u.exec(unit) ?? [];
  const other = instead(head, place);
  return other === null ? { unit, scale } : { unit: `${other.unit}${tail}`, scale: scale * other.each };
}

/** The unit that speeds and delta-v are shown in, and how many of it are one m/s. */
export function speedIn(): ShownIn {
  return shownIn('m/s', 1);
}

/** The unit that altitudes are shown in, and how many of it are one metre. */
export function altitudeIn(): ShownIn {
  return shownIn('km', 1e-3);
}

const number = '[−-]?\\d[\\d,]*(?:\\.\\d+)?';
const figures = new RegExp(
  `(${number})((?:\\s×\\s|…|\\sto\\s)(?=${number}\\s(?:km|m/s|m)\\b))?(${number})?(\\s)(km|m/s|m)(?![\\w²³/])`,
  'gu',
);

/** A sentence of the engine with its lengths and speeds in the units chosen. */
export function inUnits(text: string): string {
  if (unitSet.value === 'km') return text;
  return text.replace(
    figures,
    (
      whole,
      first: string,
      join: string | undefined,
      second: string | undefined,
      gap: string,
      unit: string,
    ) => {
      const other = instead(unit, 'length');
      if (other === null || (second !== undefined && join === undefined)) return whole;
      const convert = (figure: string) => {
        const value = Number(figure.replaceAll(',', '').replace('−', '-'));
        const given = figure.split('.')[1]?.length ?? 0;
        const decimals = Math.max(0, given - Math.round(Math.log10(other.each)));
        return formatFigure(value * other.each, { decimals: other.each > 100 ? 0 : Math.min(decimals, 2) });
      };
      const rest = second === undefined ? '' : `${join}${convert(second)}`;
      return `${convert(first)}${rest}${gap}${other.unit}`;
    },
  );
}

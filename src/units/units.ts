import type { Quantity } from './quantity.ts';
import { unitTables } from './unitTables.ts';

/** A unit as found: SI value = written value × factor + offset. */
export interface Unit {
  /** The spelling that the unit is shown by, whatever spelling it was asked for. */
  readonly spelling: string;
  readonly factor: number;
  readonly offset: number;
}

/** Superscripts and look-alike signs, as ASCII. */
const lookAlikes: Readonly<Record<string, string>> = {
  '⁻': '-',
  '−': '-',
  '¹': '1',
  '²': '2',
  '³': '3',
  '·': ' ',
  '⋅': ' ',
  '*': ' ',
  µ: 'u',
  μ: 'u',
  '″': '"',
  '′': "'",
  º: '°',
  '˚': '°',
};

/**
 * One form for the many ways to write a unit: `m·s⁻¹`, `m s^-1`, `m/s` and `(m/s)` come out alike. Case is
 * kept, since `mW` is not `MW`; only the look-up may ignore it.
 */
function plainForm(spelling: string): string {
  let text = [...spelling.trim().replaceAll('**', '')].map((letter) => lookAlikes[letter] ?? letter).join('');
  text = text.replace(/^[[({<]\s*(.*?)\s*[\])}>]$/u, '$1');
  text = text
    .replace(/\^|\*\*/gu, '')
    .replace(/_/gu, ' ')
    .replace(/\s+per\s+/giu, '/');
  // "m s-1" and "m s-2" are quotients: every factor with a negative power goes behind a stroke.
  const parts = text.split(/\s+/u);
  const below = parts.filter((part) => /^\p{L}+-\d$/u.test(part));
  if (below.length === 1 && parts.length === 2 && below[0] === parts[1]) {
    const [letters = '', power = ''] = (below[0] ?? '').split('-');
    text = `${parts[0]}/${letters}${power === '1' ? '' : power}`;
  }
  return text
    .replace(/\s*\/\s*/gu, '/')
    .replace(/\s+/gu, ' ')
    .trim();
}

interface Entry {
  readonly quantity: Quantity;
  readonly unit: Unit;
}

/** Spelling → units: as written first, then without regard to case. */
const exact = new Map<string, Entry[]>();
const anyCase = new Map<string, Entry[]>();

function add(map: Map<string, Entry[]>, key: string, entry: Entry): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [entry]);
  else if (!list.some((e) => e.quantity === entry.quantity)) list.push(entry);
}

for (const [name, rows] of Object.entries(unitTables)) {
  const quantity = name as Quantity;
  for (const { spellings, factor, offset } of rows) {
    const entry = { quantity, unit: { spelling: spellings[0] ?? '', factor, offset: offset ?? 0 } };
    for (const spelling of spellings) {
      add(exact, plainForm(spelling), entry);
      add(anyCase, plainForm(spelling).toLowerCase(), entry);
    }
  }
}

/**
 * The units that a spelling can stand for, each with its quantity: `m` is metres, `min` is minutes, `°` an
 * angle. A spelling that fits as written wins over one that fits only when case is ignored.
 */
export function findUnitAnywhere(spelling: string): readonly { quantity: Quantity; unit: Unit }[] {
  const form = plainForm(spelling);
  return exact.get(form) ?? anyCase.get(form.toLowerCase()) ?? [];
}

/** The unit of a quantity that a spelling stands for, or null. Case counts only where it must. */
export function findUnit(quantity: Quantity, spelling: string): Unit | null {
  const form = plainForm(spelling);
  const of = (entries: readonly Entry[] | undefined) =>
    entries?.find((entry) => entry.quantity === quantity)?.unit;
  return of(exact.get(form)) ?? of(anyCase.get(form.toLowerCase())) ?? null;
}

/** The units of a quantity, each by the spelling it is shown by; the SI unit first. */
export function unitSpellings(quantity: Quantity): readonly string[] {
  return unitTables[quantity].map((row) => row.spellings[0] ?? '').filter((spelling) => spelling !== '');
}

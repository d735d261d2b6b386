import { findUnit } from '../../units/units.ts';
import type { Json } from './cardDraft.ts';

const blanks = /[\s\u00a0\u202f'’_]/gu;

/** A number as people write it: `7.6e6`, `400 000`, `1,200`, `0,35`, `−12`; null for anything else. */
export function numberOf(entry: string): number | null {
  const text = entry.trim().replace(blanks, '').replace('−', '-');
  const plain = /^-?\d{1,3}(,\d{3})+(\.\d+)?$/u.test(text)
    ? text.replaceAll(',', '')
    : text.replace(/^([^.,]*),([^.,]*)$/u, '$1.$2');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/iu.test(plain) ? Number(plain) : null;
}

type Measured = Parameters<typeof findUnit>[0];

/** A value without the digits that a change of unit leaves behind: `0.1 + 0.2` is 0.3. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

/**
 * What an entry puts into the card: a number in the card's unit, else the entry itself, of which the card's reader
 * then says what is wrong. Empty: nothing.
 * @param scale shown value = card's value × scale
 */
export function readEntry(entry: string, scale: number, quantity?: Measured): Json | undefined {
  const text = entry.trim();
  if (text === '') return undefined;
  const value = numberOf(text);
  if (value !== null) return tidy(value / scale);
  // A unit written behind the number goes before the field's own: `660 kN`.
  const [, figure = '', spelling = ''] = /^([-+−\d.,'’\s]+(?:e[+-]?\d+)?)\s*(\D.*)$/iu.exec(text) ?? [];
  const unit = quantity === undefined || spelling === '' ? null : findUnit(quantity, spelling);
  const written = numberOf(figure);
  return unit === null || written === null ? text : tidy(written * unit.factor + unit.offset);
}

/** Digits of a value in a unit that is no power of ten of the card's own; the card keeps its value. */
const SHOWN_DIGITS = 7;

/** How a value of the card stands in its entry. */
export function entryText(value: Json | undefined, scale: number): string {
  if (value === undefined || value === null) return '';
  if (typeof value !== 'number') return String(value);
  const exact = Number.isInteger(Math.round(Math.log10(scale) * 1e9) / 1e9);
  return String(exact ? tidy(value * scale) : Number((value * scale).toPrecision(SHOWN_DIGITS)));
}

/** Pairs as `0 0.3; 1.05 0.55`, or one number: drag coefficients over Mach, thrust over time. */
export function readCurve(entry: string): Json | undefined {
  const text = entry.trim();
  if (text === '') return undefined;
  const single = numberOf(text);
  if (single !== null) return single;
  const rows = text
    .split(/[;\n]+/u)
    .filter((row) => row.trim() !== '')
    .map((row) =>
      row
        .trim()
        .split(/[\s:]+/u)
        .map(numberOf),
    );
  return rows.every((row) => row.length > 1 && row.every((x) => x !== null)) ? (rows as Json) : text;
}

export function curveText(value: Json | undefined): string {
  if (!Array.isArray(value)) return entryText(value, 1);
  return value.map((row) => (Array.isArray(row) ? row.join(' ') : String(row))).join('; ');
}

import { LossbookError } from '../errors.ts';
import { findUnit } from './units.ts';

/**
 * Reads an altitude as people write it: `90km`, `300 000 ft`, `1.2e5`, `120,000 m`. A bare number is metres.
 * @returns metres.
 * @throws LossbookError target-unreadable for anything else, and for a number below zero.
 */
export function readLength_m(text: string): number {
  const unreadable = () => new LossbookError('target-unreadable', { target: text });
  const match = /^\s*([+-]?(?:\d[\d,_' ]*\d|\d)?(?:\.\d*)?(?:[eE][+-]?\d+)?)\s*([^\d\s].*?)?\s*$/u.exec(text);
  const [, figure = '', unitText] = match ?? [];
  const plain = figure.replace(/[,_' ]/gu, '');
  // A comma or blank separates thousands only where three digits follow each.
  const grouped = /^[+-]?\d{1,3}(?:[,_' ]\d{3})+(?:\.\d*)?(?:[eE][+-]?\d+)?$/u.test(figure);
  if (match === null || !/\d/u.test(plain) || (figure !== plain && !grouped)) throw unreadable();
  const unit = unitText === undefined ? findUnit('length', 'm') : findUnit('length', unitText);
  const value = Number(plain);
  if (unit === null || !Number.isFinite(value) || value < 0) throw unreadable();
  return value * unit.factor + unit.offset;
}

import { expect, test } from 'vitest';
import { inks } from '../../src/exchange/inks.ts';
import { ledgerOrder } from '../../src/exchange/ledgerOrder.ts';
import { ledgerText } from '../../src/exchange/ledgerText.ts';
import { handMadeReview, unavailable } from './handMadeReview.ts';

test('every entry of the ledger has a line, and the help from rotation stands under them', () => {
  const { ledger } = handMadeReview();
  const names = ledgerText(ledger, inks(false), 80).map((line) => line.slice(0, 15).trim());
  expect(names.slice(1, 11)).toEqual([...ledgerOrder.map(([, name]) => name), 'rotation’s help']);
  expect(Object.keys(ledger.ground).sort()).toEqual(ledgerOrder.map(([key]) => key).sort());
});

test('without an ideal there are no shares', () => {
  const { ledger } = handMadeReview();
  const ground = { ...ledger.ground, ideal: unavailable('no mass') };
  const lines = ledgerText({ ...ledger, ground }, inks(false), 80);
  expect(lines.find((line) => line.startsWith('gravity'))).not.toContain('%');
});

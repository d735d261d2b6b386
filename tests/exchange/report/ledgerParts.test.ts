import { expect, test } from 'vitest';
import { ledgerParts } from '../../../src/exchange/report/ledgerParts.ts';
import type { Figure, LedgerEntries } from '../../../src/review/types.ts';

const known = (value: number): Figure => ({ value, low: value - 1, high: value + 1, basis: 'derived' });
const unknown: Figure = { value: null, low: null, high: null, basis: 'unavailable', reason: 'no mass' };

const entries: LedgerEntries = {
  ideal: known(5000),
  speedGained: known(3500),
  gravity: known(1200),
  steering: known(250),
  drag: known(40),
  backPressure: known(20),
  holdDown: known(0),
  frame: known(-10),
  unexplained: known(0.4),
};

test('shares of what was taken add up to one; a gain has no length and stands apart', () => {
  const { taken, given } = ledgerParts(entries);
  expect(taken.reduce((sum, p) => sum + p.share, 0)).toBeCloseTo(1, 12);
  expect(given.map((p) => [p.cause.key, p.share])).toEqual([['frame', 0]]);
});

test('the unexplained part is shown, zeros and absent entries are not', () => {
  const { taken } = ledgerParts({ ...entries, drag: unknown });
  const keys = taken.map((p) => p.cause.key);
  expect(keys).toContain('unexplained');
  expect(keys).not.toContain('holdDown');
  expect(keys).not.toContain('drag');
});

test('shares do not change with the scale of the figures', () => {
  const scaled = Object.fromEntries(
    Object.entries(entries).map(([k, f]) => [k, known((f.value ?? 0) * 1000)]),
  ) as unknown as LedgerEntries;
  ledgerParts(entries).taken.forEach((p, i) => {
    expect(ledgerParts(scaled).taken[i]?.share).toBeCloseTo(p.share, 12);
  });
});

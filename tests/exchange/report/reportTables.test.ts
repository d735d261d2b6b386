import { expect, test } from 'vitest';
import { drawingText } from '../../../src/exchange/report/drawing.ts';
import {
  budgetTable,
  burnsTable,
  eventsTable,
  ledgerTable,
  orbitTable,
  section,
  table,
} from '../../../src/exchange/report/reportTables.ts';
import { unitsOf } from '../../../src/units/unitSets.ts';
import { handMadeReview, unavailable } from '../handMadeReview.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

const units = unitsOf('km');

const review = handMadeReview();

/** Texts of the cells, row by row. */
function cells(drawing: ReturnType<typeof ledgerTable>): string[][] {
  if (drawing === null) return [];
  const rows = elementsOf(readMarkup(drawingText(drawing))).filter((e) => e.tag === 'tr');
  return rows.map((row) => row.children.map(textOf));
}

test('the ledger stands in both frames, with interval, share and basis', () => {
  const rows = cells(ledgerTable(review, units));
  expect(rows[0]).toEqual(['entry', 'ground frame', '95 %', 'share', 'inertial frame', 'basis']);
  expect(rows[1]).toEqual(['ideal, what the engines gave', '5,541', '±3', '', '5,541', 'derived']);
  expect(rows.find((r) => r[0] === 'gravity')).toEqual([
    'gravity',
    '1,288',
    '±5',
    '23.2 %',
    '1,291',
    'derived',
  ]);
  expect(rows.find((r) => r[0]?.startsWith('steering'))?.[0]).toBe(
    'steeringheading unseen: −10 … +0\u00a0m/s',
  );
  expect(rows.find((r) => r[0] === 'drag')?.slice(1, 3)).toEqual(['87', '86…95']);
  expect(rows.find((r) => r[0] === 'unexplained')?.at(-1)).toBe('remainder');
  expect(rows.some((r) => r[0] === 'hold-down')).toBe(false);
});

test('budget, orbit and burns leave out what is not known', () => {
  expect(cells(budgetTable(review, units)).find((r) => r[0] === 'margin')).toEqual([
    'margin',
    '−361',
    '±15',
    'derived',
  ]);
  const orbit = cells(orbitTable(review, units));
  expect(orbit.find((r) => r[0] === 'apoapsis')).toEqual(['apoapsis', '171.2', 'km', '±0.3', 'derived']);
  expect(orbit.some((r) => r[0] === 'inclination')).toBe(false);
  expect(cells(burnsTable(review, units)).at(-1)).toEqual([
    'upper (after the ascent)',
    '600.0',
    '612.0',
    '40',
    '±2',
    '—',
    '90',
  ]);
});

test('events have a planned column only where there is a plan', () => {
  expect(cells(eventsTable(review, units))[0]).toEqual(['event', 's', 'altitude km', 'speed m/s']);
  const planned = review.events.map((e) => ({ ...e, planned_s: 1 }));
  expect(cells(eventsTable({ ...review, events: planned }, units))[1]).toEqual([
    'lift-off',
    '0.0',
    '1.0',
    '0.0',
    '0',
  ]);
});

test('what would be empty is not there', () => {
  const none = unavailable('no mass');
  const keys = Object.keys(review.budget).filter((k) => k !== 'lostAt_s' && k !== 'curves');
  const budget = { ...review.budget, ...Object.fromEntries(keys.map((k) => [k, none])) };
  expect(budgetTable({ ...review, budget }, units)).toBeNull();
  expect(burnsTable({ ...review, burns: [] }, units)).toBeNull();
  expect(eventsTable({ ...review, events: [] }, units)).toBeNull();
  expect(section('x', '', null, [null])).toBeNull();
});

test('a column without a name has no heading cell', () => {
  const markup = drawingText(
    table(
      [
        { head: 'a', class: '' },
        { head: '', class: 'quiet' },
      ],
      [['1', '2']],
    ),
  );
  expect(markup).toBe(
    '<table><thead><tr><th scope="col">a</th><td></td></tr></thead><tbody><tr><th scope="row">1</th><td class="quiet">2</td></tr></tbody></table>',
  );
});

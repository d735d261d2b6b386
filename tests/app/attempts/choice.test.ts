import { expect, test } from 'vitest';
import { choiceGroups, chosenIn, chosenText, groupByIn, scoresIn } from '../../../src/app/attempts/choice.ts';
import type { FlightSource } from '../../../src/app/flightSources.ts';

function source(id: string, title: string, set?: string): FlightSource {
  return {
    id,
    title,
    origin: 'sample',
    note: '',
    load: () => Promise.reject(new Error('not read here')),
    ...(set === undefined ? {} : { set }),
  };
}

test('samples are put together by vehicle and pilot, sets apart', () => {
  const groups = choiceGroups(
    [
      source('sample:a', 'Bobstay · Tansy, attempt 1'),
      source('sample:b', 'Bobstay · Tansy, run 1 of 5', 'ladder'),
      source('sample:c', 'Bobstay · Tansy, attempt 2'),
    ],
    [],
  );
  expect(groups.map((g) => [g.heading, g.sources.map((s) => s.id)])).toEqual([
    ['Sample · Bobstay · Tansy', ['sample:a', 'sample:c']],
    ['Sample set “ladder” · Bobstay · Tansy', ['sample:b']],
  ]);
});

test('the choice goes into the address and comes back, a large one is not kept there', () => {
  expect(chosenIn({ flights: chosenText(['sample:a', 'book:b']) ?? '' })).toEqual(['sample:a', 'book:b']);
  expect(chosenIn({})).toEqual([]);
  expect(chosenText([])).toBeNull();
  expect(chosenText(Array.from({ length: 61 }, (_, i) => `book:${i}`))).toBeNull();
});

test('columns and grouping of the address; what it does not know is passed over', () => {
  expect(scoresIn({})).toContain('margin_m_s');
  expect(scoresIn({ scores: 'drag_m_s,nonsense,margin_m_s' })).toEqual(['margin_m_s', 'drag_m_s']);
  expect(groupByIn({ by: 'vehicle' })).toBe('vehicle');
  expect(groupByIn({ by: 'nonsense' })).toBe('pilot');
});

import { expect, test } from 'vitest';
import { groupFlights, readTags, search, sortFlights } from '../../../src/app/logbook/arrange.ts';
import { someFlight } from '../book/someFlight.ts';

const tansy = someFlight({
  id: '1',
  title: 'attempt 10',
  addedAt: '2031-01-03',
  summary: { pilot: 'Tansy', vehicle: 'Bobstay', margin_m_s: -351, date: '2031-05-01' },
});
const medlar = someFlight({
  id: '2',
  title: 'attempt 9',
  addedAt: '2031-01-02',
  pilot: 'Médlar',
  tags: ['windy'],
  notes: 'turned late',
  summary: { pilot: 'Tansy', vehicle: 'Fairlead', margin_m_s: 9, date: null },
});
const unknown = someFlight({
  id: '3',
  title: 'attempt 2',
  addedAt: '2031-01-01',
  summary: { margin_m_s: null },
});
const all = [tansy, medlar, unknown];
const ids = (flights: readonly { id: string }[]) => flights.map((f) => f.id).join('');

test('every word must be somewhere; accents and case do not count', () => {
  expect(ids(search(all, 'medlar WINDY'))).toBe('2');
  expect(ids(search(all, 'turned'))).toBe('2');
  expect(ids(search(all, 'medlar bobstay'))).toBe('');
  expect(ids(search(all, '  '))).toBe('123');
});

test('the reader’s own pilot goes before the card’s, in search too', () => {
  expect(ids(search(all, 'tansy'))).toBe('1');
});

test('sorting: numbers in names as numbers, what is missing last', () => {
  expect(ids(sortFlights(all, 'added'))).toBe('123');
  expect(ids(sortFlights(all, 'title'))).toBe('321');
  expect(ids(sortFlights(all, 'margin'))).toBe('213');
  expect(ids(sortFlights(all, 'date'))).toBe('132');
  expect(ids(sortFlights(all, 'pilot'))).toBe('213');
});

test('sorting never depends on the order given', () => {
  for (const by of ['added', 'date', 'title', 'pilot', 'vehicle', 'margin'] as const) {
    expect(ids(sortFlights([...all].reverse(), by))).toBe(ids(sortFlights(all, by)));
  }
});

test('groups by name, the unknown last, none lost', () => {
  expect(groupFlights(all, 'none')).toEqual([{ heading: '', flights: all }]);
  expect(groupFlights(all, 'pilot').map((g) => g.heading)).toEqual(['Médlar', 'Tansy', 'pilot unknown']);
  expect(groupFlights(all, 'both').map((g) => g.heading)).toEqual([
    'Médlar · Fairlead',
    'Tansy · Bobstay',
    'pilot unknown · vehicle unknown',
  ]);
  expect(groupFlights(all, 'vehicle').flatMap((g) => g.flights)).toHaveLength(3);
});

test('tags are trimmed and said once', () => {
  expect(readTags(' late,  windy day ,Late,, ')).toEqual(['Late', 'windy day']);
});

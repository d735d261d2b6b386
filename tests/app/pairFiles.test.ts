import { expect, test } from 'vitest';
import { pairFiles } from '../../src/app/pairFiles.ts';

const files = (...names: string[]) => names.map((name) => ({ name }));
const names = (paired: ReturnType<typeof pairFiles<{ name: string }>>) =>
  paired.flights.map((f) => [f.log.name, f.card?.name ?? null]);

test('a card belongs to the log of its base name, whatever the log’s ending', () => {
  const paired = pairFiles(
    files('a.csv', 'b.json', 'c.csv.gz', 'c.mission.json', 'a.mission.json', 'b.mission.json'),
  );
  expect(names(paired)).toEqual([
    ['a.csv', 'a.mission.json'],
    ['b.json', 'b.mission.json'],
    ['c.csv.gz', 'c.mission.json'],
  ]);
  expect(paired.loneCards).toEqual([]);
});

test('one log and one card belong together whatever their names', () => {
  expect(names(pairFiles(files('x.csv', 'bobstay.mission.json')))).toEqual([
    ['x.csv', 'bobstay.mission.json'],
  ]);
});

test('among several logs a card of another name stays alone', () => {
  const paired = pairFiles(files('a.csv', 'b.csv', 'c.mission.json'));
  expect(names(paired)).toEqual([
    ['a.csv', null],
    ['b.csv', null],
  ]);
  expect(paired.loneCards).toEqual(files('c.mission.json'));
});

test('a plan goes with the log of its base name', () => {
  const paired = pairFiles(files('a.csv', 'a.plan.csv', 'b.plan.json'));
  expect(paired.flights.map((f) => [f.log.name, f.plan?.name ?? null])).toEqual([['a.csv', 'a.plan.csv']]);
  expect(paired.lonePlans).toEqual(files('b.plan.json'));
});

test('cards can be known by more than their names', () => {
  const paired = pairFiles(files('a.csv', 'rocket.json'), (f) => f.name === 'rocket.json');
  expect(names(paired)).toEqual([['a.csv', 'rocket.json']]);
});

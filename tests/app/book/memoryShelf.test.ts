import { expect, test } from 'vitest';
import { memoryShelf } from '../../../src/app/book/memoryShelf.ts';
import { someFlight } from './someFlight.ts';

test('keeps, changes and erases flights with their logs', async () => {
  const shelf = memoryShelf();
  const log = new Blob(['abc']);
  await shelf.put(someFlight(), log);
  expect(await shelf.log('a')).toBe(log);
  expect(await shelf.change('a', { notes: 'late' })).toMatchObject({ notes: 'late', title: 'evening' });
  expect(await shelf.flights()).toEqual([someFlight({ notes: 'late' })]);
  expect(await shelf.change('b', { notes: 'x' })).toBeNull();
  await shelf.erase(['a', 'b']);
  expect(await shelf.flights()).toEqual([]);
  expect(await shelf.log('a')).toBeNull();
});

test('remembers columns by headers, forgets them without choices', async () => {
  const shelf = memoryShelf();
  const choices = [{ channel: 'altitude', column: 'h', unit: 'km' }] as const;
  await shelf.rememberColumns({ headers: ['t', 'H'], choices });
  await shelf.rememberColumns({ headers: ['h ', 'T'], choices });
  expect(await shelf.columns()).toHaveLength(1);
  await shelf.rememberColumns({ headers: ['T', 'h'], choices: [] });
  expect(await shelf.columns()).toEqual([]);
});

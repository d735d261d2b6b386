import { expect, test } from 'vitest';
import { likelyFiles, pastedFile } from '../../src/app/gatherFiles.ts';

const now = new Date('2031-05-17T12:34:56Z');

test('of a folder only readable endings count, hidden files never', () => {
  const files = ['a.csv', 'b.mission.json', 'c.png', '.csv', '.hidden.csv', 'd.CSV.gz', 'notes.md'];
  expect(likelyFiles(files.map((name) => ({ name }))).map((f) => f.name)).toEqual([
    'a.csv',
    'b.mission.json',
    'd.CSV.gz',
  ]);
});

test('pasted rows become a file named by the moment', async () => {
  const file = pastedFile('t,alt\n0,0\n1,5\n', now);
  expect(file?.name).toBe('pasted 2031-05-17 12.34.56.csv');
  expect(await file?.text()).toBe('t,alt\n0,0\n1,5\n');
  expect(pastedFile('{"t":[0,1]}', now)?.name).toMatch(/\.json$/);
});

test('a pasted word or sentence is no log', () => {
  expect(pastedFile('Medlar', now)).toBeNull();
  expect(pastedFile('two\nlines', now)).toBeNull();
  expect(pastedFile('', now)).toBeNull();
});

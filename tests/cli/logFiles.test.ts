import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { logFiles } from '../../src/cli/logFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-folders-'));
const at = (...names: string[]) => join(folder, ...names);

beforeAll(() => {
  mkdirSync(at('season', 'autumn'), { recursive: true });
  mkdirSync(at('bare'));
  for (const name of [
    'b.csv',
    'a.json',
    'a.mission.json',
    'b.plan.csv',
    'index.json',
    '.hidden.csv',
    'readme.md',
  ])
    writeFileSync(at('season', name), 'x');
  writeFileSync(at('season', 'autumn', 'c.csv.gz'), 'x');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a folder stands for the logs in it and below it, by their paths', async () => {
  expect(await logFiles([at('season')])).toEqual([
    at('season', 'a.json'),
    at('season', 'autumn', 'c.csv.gz'),
    at('season', 'b.csv'),
  ]);
  expect(await logFiles([at('bare')])).toEqual([]);
});

test('files stay as they were given, there or not', async () => {
  const given = ['-', at('season', 'readme.md'), at('nothing.csv')];
  expect(await logFiles(given)).toEqual(given);
});

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openResults } from '../../src/cli/resultFile.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-results-'));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const line = (log: string, more = '') => `${JSON.stringify({ log, review: { text: more } })}\n`;

test('a new file is begun, and added to', async () => {
  const file = await openResults(at('new.jsonl'));
  expect([...file.done]).toEqual([]);
  await file.add(line('a.csv'));
  await file.add(line('b "two".csv'));
  await file.close();
  const again = await openResults(at('new.jsonl'));
  expect([...again.done]).toEqual(['a.csv', 'b "two".csv']);
  await again.close();
});

test('a last line cut short is taken away, wherever the reading breaks it', async () => {
  const long = line('long.csv', 'ü'.repeat(200_000));
  writeFileSync(at('cut.jsonl'), line('a.csv') + long + line('c.csv').slice(0, 12));
  const file = await openResults(at('cut.jsonl'));
  expect([...file.done]).toEqual(['a.csv', 'long.csv']);
  await file.add(line('d.csv'));
  await file.close();
  expect(readFileSync(at('cut.jsonl'), 'utf8')).toBe(line('a.csv') + long + line('d.csv'));
});

test('another file is not touched', async () => {
  writeFileSync(at('log.csv'), 'time,altitude\n0,1\n');
  writeFileSync(at('word.txt'), 'no line');
  for (const name of ['log.csv', 'word.txt'])
    await expect(openResults(at(name))).rejects.toThrow(/is not a file of lines that --jsonl writes/);
  expect(readFileSync(at('log.csv'), 'utf8')).toBe('time,altitude\n0,1\n');
  expect(readFileSync(at('word.txt'), 'utf8')).toBe('no line');
  await expect(openResults(at('no/such.jsonl'))).rejects.toThrow(/cannot be written/);
});

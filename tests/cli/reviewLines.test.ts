import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Comparison } from '../../src/attempts/types.ts';
import { run } from '../../src/cli/run.ts';
import type { Terminal } from '../../src/cli/terminal.ts';
import { reviewJson } from '../../src/exchange/reviewJson.ts';
import type { Review } from '../../src/review/types.ts';

const samples = resolve(import.meta.dirname, '../../sample-logs');
const built = pathToFileURL(resolve(import.meta.dirname, '../../dist/cli/lossbook.js'));
const folder = mkdtempSync(join(tmpdir(), 'lossbook-many-'));
const at = (name: string) => join(folder, name);

interface Line {
  readonly log: string;
  readonly review?: Review;
  readonly error?: { readonly exit: number; readonly message: string };
}

/** Runs a command inside this process, its many logs in other threads where that is asked for. */
async function lossbook(args: readonly string[], threads = false) {
  let out = '';
  const notes: string[] = [];
  const terminal: Terminal = {
    result: (text) => {
      out += text;
    },
    note: (text) => void notes.push(text),
    width: 80,
    colour: false,
    watched: false,
  };
  const code = await run(args, terminal, threads ? { entry: built, args } : null);
  return { code, out, notes };
}

const linesOf = (text: string) =>
  text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Line);

beforeAll(() => {
  for (const name of readdirSync(samples).filter((n) => /^ladder-(?:tansy|medlar)-[123]\./.test(n)))
    cpSync(join(samples, name), at(name));
  writeFileSync(at('ladder-broken.csv'), 'this is\nnot a log\n');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('lossbook review FOLDER --jsonl', () => {
  test('a line for each log in their order, the broken one among them, the same from all cores', async () => {
    const alone = await lossbook(['review', folder, '--jsonl']);
    const shared = await lossbook(['review', folder, '--jsonl'], true);
    expect(shared).toEqual(alone);
    expect(alone.code).toBe(3);
    const lines = linesOf(alone.out);
    expect(lines.map((l) => l.log)).toEqual(
      readdirSync(folder)
        .filter((n) => n.endsWith('.csv'))
        .sort()
        .map(at),
    );
    const [broken, ...good] = lines;
    expect(broken?.error).toMatchObject({ exit: 3, message: expect.stringContaining('ladder-broken.csv') });
    expect(good.every((l) => l.review?.schema === 'lossbook-review/1')).toBe(true);
    expect(alone.notes.at(-1)).toBe('6 mission cards and plans lie beside their logs and are taken');
  });

  test('--resume goes on where a run broke off', async () => {
    const results = at('results.jsonl.txt.part');
    expect((await lossbook(['review', at('ladder-medlar-1.csv'), '--resume', results])).code).toBe(0);
    await lossbook(['review', at('ladder-medlar-2.csv'), '--resume', results]);
    const whole = readFileSync(results);
    truncateSync(results, whole.length - 1000);
    const { code, out, notes } = await lossbook(['review', folder, '--resume', results], true);
    expect(code).toBe(3);
    expect(out).toBe('');
    expect(notes).toContain(`1 of 7 logs stand in ${results} already`);
    const logs = linesOf(readFileSync(results, 'utf8')).map((l) => l.log);
    expect(logs[0]).toBe(at('ladder-medlar-1.csv'));
    expect(new Set(logs).size).toBe(7);
    const nothing = await lossbook(['review', folder, '--resume', results]);
    expect(nothing).toMatchObject({ code: 0, out: '' });
  });

  test.each([
    [['--jsonl', '--json'], /--json and --jsonl are two forms/],
    [['--jsonl', '--report', 'x.html'], /--report is not written beside --jsonl/],
    [['--resume', at('ladder-tansy-1.csv')], /would overwrite an input/],
    [['--resume', at('ladder-tansy-1.mission.json')], /is not a file of lines/],
    [['--jsonl', '--world', 'erth'], /there is no world “erth”/],
  ] as const)('%j is a usage error, told once', async (more, message) => {
    const { code, out, notes } = await lossbook(['review', folder, ...more]);
    expect({ code, out, notes: notes.length }).toEqual({ code: 2, out: '', notes: 1 });
    expect(notes[0]).toMatch(message);
  });
});

test('--json and compare take a folder too, and give the same from all cores', async () => {
  const array = await lossbook(['review', folder, '--json'], true);
  expect(array.code).toBe(3);
  const documents = JSON.parse(array.out) as Review[];
  expect(documents.map((r) => r.source.file)).toHaveLength(6);
  // Written one by one, the text is that of the whole array.
  expect(array.out).toBe(reviewJson(documents));
  expect((await lossbook(['review', at('ladder-broken.csv'), at('none.csv'), '--json'])).out).toBe('[]\n');
  const one = await lossbook(['compare', folder, '--json']);
  const all = await lossbook(['compare', folder, '--json'], true);
  expect(all.out).toBe(one.out);
  expect((JSON.parse(all.out) as Comparison).rows).toHaveLength(6);
});

import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Comparison } from '../../src/attempts/types.ts';
import { run } from '../../src/cli/run.ts';
import type { Terminal } from '../../src/cli/terminal.ts';

const samples = resolve(import.meta.dirname, '../../sample-logs');
const logs = ['ladder-tansy-1.csv', 'ladder-tansy-2.csv', 'ladder-medlar-5.csv'].map((name) =>
  resolve(samples, name),
);

/** Runs a command inside this process. */
async function lossbook(...args: string[]) {
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
  return { code: await run(args, terminal), out, notes };
}

describe('lossbook compare', () => {
  test('sets logs side by side with the cards beside them', async () => {
    const { code, out, notes } = await lossbook('compare', ...logs);
    expect(code).toBe(0);
    expect(notes).toEqual(['3 mission cards and plans lie beside their logs and are taken']);
    expect(out).toContain('3 attempts by pilot, held against ladder-tansy-');
    expect(out).toMatch(/\nMedlar ─+/u);
    expect(out).toMatch(/\nTansy ─+/u);
  }, 60_000);

  test('as JSON, by vehicle, against a log of one’s choice', async () => {
    const { code, out } = await lossbook(
      'compare',
      ...logs,
      '--json',
      '--by',
      'vehicle',
      '--reference',
      'ladder-medlar-5.csv',
    );
    expect(code).toBe(0);
    const document = JSON.parse(out) as Comparison;
    expect(document.schema).toBe('lossbook-comparison/1');
    expect(document.groups.map((g) => g.name)).toEqual(['Bobstay']);
    expect(document.reference).toEqual({ name: 'ladder-medlar-5.csv', why: 'as asked' });
    expect(document.rows.length).toBe(3);
  }, 60_000);

  test('against the plan, here another flight', async () => {
    const { code, out } = await lossbook(
      'compare',
      ...logs.slice(0, 2),
      '--plan',
      logs[2]!,
      '--reference',
      'plan',
    );
    expect(code).toBe(0);
    expect(out).toContain('held against the plan (as asked)');
    expect(out).toMatch(/m\/s cheaper than the plan/u);
  }, 120_000);

  test('a log that cannot be read is told and left out', async () => {
    const { code, out, notes } = await lossbook('compare', logs[0]!, logs[1]!, 'nowhere.csv');
    expect(code).toBe(3);
    expect(out).toContain('2 attempts by pilot');
    expect(notes.some((note) => note.includes('there is no such file'))).toBe(true);
  }, 60_000);

  test.each([
    [['compare', logs[0]!], /two logs or more/],
    [['compare', ...logs, '--by', 'pilots'], /did you mean “pilot”\?/],
    [['compare', ...logs, '--reference', 'ladder-tansy-9.csv'], /is none of these logs/],
    [['compare', ...logs, '--reference', 'plan'], /needs a plan/],
    [['compare', '-', '-'], /read only once/],
  ] as [string[], RegExp][])(
    '%j is a usage error',
    async (args, message) => {
      const { code, out, notes } = await lossbook(...args);
      expect([code, out]).toEqual([2, '']);
      expect(notes.join('\n')).toMatch(message);
    },
    60_000,
  );
});

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
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

  test('against a log that is not compared, and against the best ascent', async () => {
    const other = resolve(samples, 'ladder-teasel-3.csv');
    const against = await lossbook('compare', ...logs, '--reference', other);
    expect(against.code).toBe(0);
    expect(against.out).toContain('3 attempts by pilot, held against ladder-teasel-3.csv (as asked).');
    const best = await lossbook('compare', ...logs, '--reference', 'best');
    expect(best.out).toContain('3 attempts by pilot, held against the best ascent (as asked).');
  }, 120_000);

  test('flies the best phases of a pilot’s own flights one after another', async () => {
    const { out } = await lossbook('compare', ...logs, '--json');
    const { stitched } = JSON.parse(out) as Comparison;
    // Medlar has one attempt here: nothing to stitch.
    expect(stitched.map((s) => [s.group, s.kind])).toEqual([['Tansy', 'flown']]);
    const told = await lossbook('compare', ...logs);
    expect(told.out).toContain('Best phases flown one after another');
    expect(told.out).toMatch(/· Tansy: flown one after another, the best phases leave 1,4\d\d m\/s/u);
  }, 120_000);

  test('two logs of one name are told apart', async () => {
    const { out } = await lossbook('compare', logs[0]!, logs[0]!, '--json');
    const { rows } = JSON.parse(out) as Comparison;
    expect(rows.map((r) => r.name)).toEqual(['ladder-tansy-1.csv', 'ladder-tansy-1.csv (2)']);
  }, 60_000);

  test('writes a report; never over an input, and says where it cannot', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'compare-'));
    try {
      const file = join(folder, 'report.html');
      const { code } = await lossbook('compare', ...logs, '--report', file);
      expect(code).toBe(0);
      const html = readFileSync(file, 'utf8');
      expect(html.startsWith('<!doctype html>')).toBe(true);
      expect(html).toContain('ladder-medlar-5.csv');
      const nowhere = await lossbook('compare', ...logs, '--report', join(folder, 'none', 'report.html'));
      expect(nowhere.code).not.toBe(0);
      expect(nowhere.notes.join('\n')).toContain('report.html');
    } finally {
      rmSync(folder, { recursive: true });
    }
    const over = await lossbook('compare', ...logs, '--report', logs[1]!);
    expect([over.code, over.out]).toEqual([2, '']);
    expect(over.notes.join('\n')).toContain('would overwrite an input');
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
    [
      ['compare', ...logs, '--reference', 'ladder-tansy-9.csv'],
      /is none of these logs, nor another that can be reviewed/,
    ],
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

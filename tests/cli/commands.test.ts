import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commands, helpText } from '../../src/cli/commands.ts';

describe('help', () => {
  test.each([null, ...commands])('fits 80 columns', (command) => {
    const text = helpText(command, '1.2.3');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
  test('of a command lists each of its options', () => {
    for (const command of commands) {
      const text = helpText(command, '1.2.3');
      for (const option of [...command.options, { name: 'help' }]) expect(text).toContain(`--${option.name}`);
    }
  });
  test('of the whole names the version and every command', () => {
    const text = helpText(null, '1.2.3');
    expect(text).toContain('lossbook 1.2.3');
    for (const { name } of commands) expect(text).toContain(`lossbook ${name} `);
  });
  test('tells of no option that no command looks at', () => {
    const folder = resolve(import.meta.dirname, '../../src/cli');
    const sources = readdirSync(folder).filter((file) => file !== 'commands.ts');
    const text = sources.map((file) => readFileSync(resolve(folder, file), 'utf8')).join('\n');
    const looked = (name: string) =>
      new RegExp(`(?:value|values|on)\\('${name}'\\)|option: '${name}'`, 'u').test(text);
    const told = new Set(commands.flatMap((c) => c.options.map((o) => o.name)));
    expect(told.size).toBeGreaterThan(15);
    expect([...told].filter((name) => !looked(name))).toEqual([]);
  });
  test('tells the exit codes of every command', () => {
    for (const { name, notes } of commands) expect(notes.join('\n'), name).toMatch(/^Exit code: 0 /m);
  });
});

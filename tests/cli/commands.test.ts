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
});

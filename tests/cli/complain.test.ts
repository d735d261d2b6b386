import { expect, test } from 'vitest';
import { complain } from '../../src/cli/complain.ts';
import type { Terminal } from '../../src/cli/terminal.ts';
import { LossbookError } from '../../src/errors.ts';

function said(error: unknown, path?: string): { notes: string[]; exit: number } {
  const notes: string[] = [];
  const terminal: Terminal = {
    result: () => undefined,
    note: (text) => notes.push(text),
    width: 80,
    colour: false,
    watched: false,
  };
  return { exit: complain(error, terminal, path), notes };
}

test('a message names the file as the user wrote it and gives the exit code', () => {
  const error = new LossbookError('file-empty', {}, { file: 'a.csv' });
  const { exit, notes } = said(error, 'logs/a.csv');
  expect([exit, notes.length]).toEqual([3, 1]);
  expect(notes[0]).toMatch(/^logs\/a\.csv: the file holds nothing;/);
});

test('a fault of the program has one line, no stack trace and an exit code', () => {
  const { exit, notes } = said(new TypeError('x is undefined'), 'a.csv');
  expect(exit).toBe(3);
  expect(notes).toEqual([
    'a.csv: a fault of lossbook itself (TypeError: x is undefined); please report it with the input.',
  ]);
});

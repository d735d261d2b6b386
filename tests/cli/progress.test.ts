import { expect, test } from 'vitest';
import { withProgress } from '../../src/cli/progress.ts';
import type { Terminal } from '../../src/cli/terminal.ts';

const terminal: Terminal = {
  result: () => undefined,
  note: () => undefined,
  width: 80,
  colour: false,
  watched: false,
};

test.each([true, false])('the work’s result and its failure come through (watched: %s)', async (watched) => {
  const watchedTerminal = { ...terminal, watched };
  expect(await withProgress(watchedTerminal, 'working', async () => 7)).toBe(7);
  await expect(
    withProgress(watchedTerminal, 'working', () => Promise.reject(new Error('no'))),
  ).rejects.toThrow('no');
});

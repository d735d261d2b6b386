import { expect, test, vi } from 'vitest';
import { withCount, withProgress } from '../../src/cli/progress.ts';
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

test.each([true, false])(
  'of many things each comes through, counted where a person watches: %s',
  async (watched) => {
    const told: string[] = [];
    const stderr = vi
      .spyOn(process.stderr, 'write')
      .mockImplementation((text) => told.push(String(text)) > 0);
    // The second passes between the first thing and the next.
    const clock = vi
      .spyOn(performance, 'now')
      .mockReturnValueOnce(0)
      .mockReturnValueOnce(10)
      .mockReturnValue(1500);
    async function* things() {
      yield* ['a', 'b', 'c'];
    }
    const taken: string[] = [];
    for await (const thing of withCount({ ...terminal, watched }, 3, things())) taken.push(thing);
    stderr.mockRestore();
    clock.mockRestore();
    expect(taken).toEqual(['a', 'b', 'c']);
    expect(told).toEqual(watched ? ['\r2 of 3 logs ', '\r\u001b[K'] : []);
  },
);

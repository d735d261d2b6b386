import { afterEach, expect, test, vi } from 'vitest';
import { type Analyst, askWhile, createAnalyst } from '../../src/app/analyst.ts';

afterEach(() => vi.unstubAllGlobals());

/** Whether a promise is answered soon. */
const soon = (asked: Promise<unknown>) =>
  Promise.race([asked.then(() => 'answered'), new Promise((done) => setTimeout(done, 5, 'silent'))]);

const file = { name: 'a.csv', blob: new Blob([]) };

test('work that was overtaken asks no more, and its question is never answered', async () => {
  const asked: string[] = [];
  const ask: Analyst['ask'] = (task) => {
    asked.push(task);
    return Promise.resolve('log' as never);
  };
  let stands = true;
  const asking = askWhile({ ask }, () => stands);
  expect(await asking('kind', file)).toBe('log');
  stands = false;
  expect(await soon(asking('kind', file))).toBe('silent');
  expect(asked).toEqual(['kind']);
});

test('a worker that fails after it was ended does not end the one that took its place', async () => {
  const workers: FakeWorker[] = [];
  class FakeWorker {
    onmessage: ((event: { data: unknown }) => void) | null = null;
    onerror: ((event: { message: string }) => void) | null = null;
    ended = false;
    lastId = 0;
    constructor() {
      workers.push(this);
    }
    postMessage({ id }: { readonly id: number }) {
      this.lastId = id;
    }
    terminate() {
      this.ended = true;
    }
  }
  vi.stubGlobal('Worker', FakeWorker);
  const analyst = createAnalyst();
  void analyst.ask('kind', file);
  const second = analyst.ask('kind', file);
  const [early, late] = workers;
  expect(early?.ended).toBe(true);
  early?.onerror?.({ message: 'it could not be fetched' });
  expect(late?.ended).toBe(false);
  late?.onmessage?.({ data: { id: late.lastId, kind: 'done', result: 'log' } });
  expect(await second).toBe('log');
});

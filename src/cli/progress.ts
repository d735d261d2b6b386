import { Worker } from 'node:worker_threads';
import { plainText } from '../exchange/plainText.ts';
import { cutText } from '../exchange/wrapText.ts';
import type { Watch } from '../log/watch.ts';
import type { Terminal } from './terminal.ts';

/**
 * Tells of the work beside it, in a thread of its own because the work keeps this one busy; CommonJS because it is
 * run as text. While the log is read its share is told, then the seconds so far. `told` holds whether there is a line
 * to take away, and the share in percent.
 */
const ticker = `
const { workerData } = require('node:worker_threads');
const { writeSync } = require('node:fs');
const { text, told } = workerData;
const begun = Date.now();
setTimeout(() => setInterval(() => {
  const percent = Atomics.load(told, 1);
  const seconds = Math.floor((Date.now() - begun) / 1000);
  Atomics.store(told, 0, 1);
  try { writeSync(2, '\\r' + text + ' … ' + (percent < 100 ? percent + ' % read ' : seconds + ' s      ')); } catch {}
}, 200), 800);
`;

/**
 * Does the work and, where a person watches, shows on stderr what goes on from the first second on. The work says how
 * far the reading of its log has come, 0 to 1.
 */
export async function withProgress<T>(
  terminal: Terminal,
  text: string,
  work: (heard: Pick<Watch, 'onProgress'>) => Promise<T>,
): Promise<T> {
  if (!terminal.watched) return work({});
  const told = new Int32Array(new SharedArrayBuffer(8));
  const worker = new Worker(ticker, {
    eval: true,
    workerData: { text: cutText(plainText(text), 60), told },
  });
  worker.unref();
  worker.on('error', () => undefined);
  try {
    return await work({ onProgress: (share) => Atomics.store(told, 1, Math.round(100 * share)) });
  } finally {
    await worker.terminate();
    if (Atomics.load(told, 0) === 1) process.stderr.write('\r\u001b[K');
  }
}

/**
 * Hands on what comes and, where a person watches, shows on stderr how many of how many have come, from the first
 * second on. The line is gone while an item is in the taker's hands, who may write.
 */
export async function* withCount<T>(
  terminal: Terminal,
  total: number,
  items: AsyncIterable<T>,
): AsyncGenerator<T> {
  const begun = performance.now();
  const count = (k: number): string => k.toLocaleString('en-US');
  let done = 0;
  let shown = false;
  const clear = (): void => {
    if (shown) process.stderr.write('\r\u001b[K');
    shown = false;
  };
  try {
    for await (const item of items) {
      clear();
      yield item;
      done++;
      if (!terminal.watched || done === total || performance.now() - begun < 1000) continue;
      process.stderr.write(`\r${count(done)} of ${count(total)} logs `);
      shown = true;
    }
  } finally {
    clear();
  }
}

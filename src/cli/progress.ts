import { Worker } from 'node:worker_threads';
import { plainText } from '../exchange/plainText.ts';
import { cutText } from '../exchange/wrapText.ts';
import type { Terminal } from './terminal.ts';

/**
 * Counts seconds beside the work, in a thread of its own because the work keeps this one busy; CommonJS because
 * it is run as text. `written` tells whether there is a line to take away.
 */
const ticker = `
const { workerData } = require('node:worker_threads');
const { writeSync } = require('node:fs');
let seconds = 0;
setInterval(() => {
  seconds += 1;
  Atomics.store(workerData.written, 0, 1);
  try { writeSync(2, '\\r' + workerData.text + ' … ' + seconds + ' s '); } catch {}
}, 1000);
`;

/** Does the work and, where a person watches, shows on stderr what goes on from the first second on. */
export async function withProgress<T>(terminal: Terminal, text: string, work: () => Promise<T>): Promise<T> {
  if (!terminal.watched) return work();
  const written = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(ticker, {
    eval: true,
    workerData: { text: cutText(plainText(text), 60), written },
  });
  worker.unref();
  worker.on('error', () => undefined);
  try {
    return await work();
  } finally {
    await worker.terminate();
    if (Atomics.load(written, 0) === 1) process.stderr.write('\r\u001b[K');
  }
}

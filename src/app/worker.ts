import { reviewFlight } from '../review/reviewFlight.ts';
import type { Analysis } from '../review/types.ts';
import { failureOf } from './failure.ts';
import type { Ask, Reply } from './protocol.ts';

/** The worker's global scope, typed by hand: the DOM's and the worker's type libraries cannot be used together. */
interface WorkerScope {
  onmessage: ((event: MessageEvent<Ask>) => void) | null;
  postMessage(message: Reply, transfer?: Transferable[]): void;
}

const scope = self as unknown as WorkerScope;

/** Buffers of the sampled channels, each once, so that they are handed over and not copied. */
function buffersOf(analysis: Analysis): Transferable[] {
  const arrays = [analysis.strips.time_s, ...Object.values(analysis.strips.channels).map((s) => s.values)];
  return [...new Set(arrays.map((a) => a.buffer as ArrayBuffer))];
}

scope.onmessage = async ({ data: ask }) => {
  try {
    scope.postMessage({
      id: ask.id,
      kind: 'progress',
      text: 'reading the log and working out where its delta-v went',
    });
    const result = await reviewFlight(ask.request);
    scope.postMessage({ id: ask.id, kind: 'done', result }, buffersOf(result));
  } catch (error) {
    scope.postMessage({
      id: ask.id,
      kind: 'failed',
      failure: failureOf(error, { file: ask.request.log.name }),
    });
  }
};

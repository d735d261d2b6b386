import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { gatherBytes } from '../../src/log/gatherBytes.ts';
import { logLimits } from '../../src/log/limits.ts';
import { Pace } from '../../src/log/watch.ts';

const pace = new Pace({}, 'x');
const gather = (chunks: Parameters<typeof gatherBytes>[0], total?: number) =>
  gatherBytes(chunks, total, 'x', pace, (part) => part);
const pieces = Array.from({ length: 70 }, (_, k) => new Uint8Array(1000).fill(k & 255));
const whole = Uint8Array.from(pieces.flatMap((piece) => [...piece]));

describe('gatherBytes', () => {
  test.each([
    ['nothing', undefined],
    ['the right size', whole.length],
    ['too small a size', 10],
    ['too large a size', 2 * whole.length],
  ])('knowing %s', async (_, total) => {
    expect(await gather(pieces, total)).toEqual(whole);
    expect(await gather(new Blob(pieces).stream(), total)).toEqual(whole);
  });

  test('stops a source that is over the limit', async () => {
    let given = 0;
    const endless = (function* () {
      const piece = new Uint8Array(200e6);
      for (;;) {
        given++;
        yield piece;
      }
    })();
    const refused = await gather(endless).catch((error: unknown) => error);
    expect(refused instanceof LossbookError && refused.code).toBe('log-too-large');
    expect(given).toBe(3);
    const told = await gather([], logLimits.fileBytes + 1).catch((error: unknown) => error);
    expect(told instanceof LossbookError && told.code).toBe('log-too-large');
  });

  test('a stream that is left early is let go', async () => {
    let cancelled = false;
    const stream = new ReadableStream<Uint8Array>({
      pull: (controller) => controller.enqueue(new Uint8Array(200e6)),
      cancel: () => {
        cancelled = true;
      },
    });
    await gather(stream).catch(() => undefined);
    expect(cancelled).toBe(true);
  });
});

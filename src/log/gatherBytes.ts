import { withinLimit } from './limits.ts';
import type { Pace } from './watch.ts';

/** A file's content as it comes: a stream of the platform (`blob.stream()`) or anything that yields pieces. */
export type ByteChunks = AsyncIterable<Uint8Array> | Iterable<Uint8Array> | ReadableStream<Uint8Array>;

/** Room made at first where nobody says how much will come. */
const FIRST_BYTES = 1 << 16;

/**
 * The whole of a file that comes in pieces of any size. Known sizes are allotted at once, so that the file lies in
 * memory one time only.
 * @param totalBytes the size where it is known; a wrong one costs time only
 * @param share hears which part of the bytes is there, where the size is known
 * @throws LossbookError `log-too-large` as soon as more than the limit has come, `cancelled`.
 */
export async function gatherBytes(
  chunks: ByteChunks,
  totalBytes: number | undefined,
  name: string,
  pace: Pace,
  share: (part: number) => number,
): Promise<Uint8Array<ArrayBuffer>> {
  if (totalBytes !== undefined) withinLimit('fileBytes', totalBytes, name);
  let room = new Uint8Array(totalBytes ?? FIRST_BYTES);
  let length = 0;
  pace.check();
  for await (const chunk of piecesOf(chunks)) {
    withinLimit('fileBytes', length + chunk.length, name);
    if (length + chunk.length > room.length) {
      const larger = new Uint8Array(Math.max(length + chunk.length, room.length * 2));
      larger.set(room.subarray(0, length));
      room = larger;
    }
    room.set(chunk, length);
    length += chunk.length;
    if (pace.due) await pace.report(totalBytes === undefined ? 0 : share(length / totalBytes));
  }
  return room.subarray(0, length);
}

/** Not every browser lets a stream be looped over. */
async function* piecesOf(chunks: ByteChunks): AsyncGenerator<Uint8Array> {
  if (!('getReader' in chunks)) {
    yield* chunks;
    return;
  }
  const reader = chunks.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // Where reading ends early the source is let go.
    await reader.cancel().catch(() => undefined);
  }
}

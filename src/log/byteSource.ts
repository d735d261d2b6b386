import { withinLimit } from './limits.ts';

/** A file of known size of which any part can be read, again too: it never needs to lie in memory whole. */
export interface ByteSource {
  /** Bytes. */
  readonly size: number;
  /** Fills `into` with the bytes from `at` on and says how many came: none only where the file ends. */
  read(at: number, into: Uint8Array): Promise<number>;
}

/** The bytes of a stretch of a file; fewer where it ends. */
export async function stretchOf(source: ByteSource, from: number, to: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(Math.max(0, Math.min(to, source.size) - from));
  let length = 0;
  while (length < bytes.length) {
    const came = await source.read(from + length, bytes.subarray(length));
    if (came === 0) break;
    length += came;
  }
  return bytes.subarray(0, length);
}

/** A browser's file, or any other blob, as such a source. */
export function blobSource(blob: Blob): ByteSource {
  return {
    size: blob.size,
    read: async (at, into) => {
      const part = new Uint8Array(await blob.slice(at, at + into.length).arrayBuffer());
      into.set(part);
      return part.length;
    },
  };
}

/** The whole of a file. @throws LossbookError `log-too-large`. */
export function wholeOf(source: ByteSource, name: string): Promise<Uint8Array> {
  withinLimit('fileBytes', source.size, name);
  return stretchOf(source, 0, source.size);
}

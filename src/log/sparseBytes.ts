import { type ByteSource, stretchOf } from './byteSource.ts';

/** Bytes that can be searched and cut: an array of them, or parts of a file. */
export interface ByteView {
  readonly length: number;
  indexOf(byte: number, from?: number): number;
  subarray(from: number, to: number): Uint8Array;
}

/** What was asked for lies in none of the parts at hand. */
export class NotAtHand extends Error {}

/** Some parts of a file, looked at as if it were there whole. Asking for anything else throws `NotAtHand`. */
export class SparseBytes implements ByteView {
  readonly length: number;
  readonly parts: readonly { readonly at: number; readonly bytes: Uint8Array }[];

  private constructor(length: number, parts: SparseBytes['parts']) {
    this.length = length;
    this.parts = parts;
  }

  /** Reads the parts of a file that begin at these bytes and have these lengths; they must not overlap. */
  static async of(
    source: ByteSource,
    parts: readonly { readonly at: number; readonly length: number }[],
  ): Promise<SparseBytes> {
    const read: { at: number; bytes: Uint8Array }[] = [];
    for (const { at, length } of parts) read.push({ at, bytes: await stretchOf(source, at, at + length) });
    return new SparseBytes(source.size, read);
  }

  indexOf(byte: number, from = 0): number {
    if (from >= this.length) return -1;
    const { at, bytes } = this.partOf(from);
    const found = bytes.indexOf(byte, from - at);
    if (found >= 0) return at + found;
    if (at + bytes.length >= this.length) return -1;
    throw new NotAtHand();
  }

  subarray(from: number, to: number): Uint8Array {
    const end = Math.min(to, this.length);
    if (from >= end) return new Uint8Array(0);
    const { at, bytes } = this.partOf(from);
    if (end > at + bytes.length) throw new NotAtHand();
    return bytes.subarray(from - at, end - at);
  }

  private partOf(byte: number): { readonly at: number; readonly bytes: Uint8Array } {
    const part = this.parts.find(({ at, bytes }) => byte >= at && byte < at + bytes.length);
    if (part === undefined) throw new NotAtHand();
    return part;
  }
}

import type { TextLike } from './sampleLines.ts';
import type { ByteView } from './sparseBytes.ts';

/** Bytes from the beginning that may hold other letters than ASCII: preamble, header, units. */
const HEAD_BYTES = 1 << 16;
const LF = 10;
const letters = new TextDecoder('utf-8', { fatal: true });
/** One letter a byte; below the head they are found to be ASCII when they are read. */
const plain = new TextDecoder('windows-1252');

/** UTF-8 bytes that are ASCII below their head, looked at like the text that they hold, without making it. */
export class BytesAsText implements TextLike {
  readonly length: number;
  /** Bytes of a byte-order mark at the beginning. */
  readonly mark: number;
  /** From this byte on a letter is a byte. */
  readonly asciiFrom: number;
  private readonly bytes: ByteView;
  private readonly head: string;
  /** Bytes of the head beyond one for each letter. */
  private readonly surplus: number;

  private constructor(bytes: ByteView, head: string, asciiFrom: number, mark: number) {
    this.bytes = bytes;
    this.head = head;
    this.mark = mark;
    this.asciiFrom = asciiFrom;
    this.surplus = asciiFrom - head.length;
    this.length = bytes.length - this.surplus;
  }

  /** Null where the head is not UTF-8. */
  static of(bytes: ByteView): BytesAsText | null {
    const end = bytes.indexOf(LF, Math.min(HEAD_BYTES, bytes.length));
    const asciiFrom = end < 0 ? bytes.length : end + 1;
    const [a, b, c] = bytes.subarray(0, 3);
    const mark = a === 0xef && b === 0xbb && c === 0xbf ? 3 : 0;
    try {
      return new BytesAsText(bytes, letters.decode(bytes.subarray(0, asciiFrom)), asciiFrom, mark);
    } catch {
      return null;
    }
  }

  indexOf(sign: string, from = 0): number {
    if (from < this.head.length) {
      const found = this.head.indexOf(sign, from);
      if (found >= 0) return found;
    }
    const at = this.bytes.indexOf(sign.charCodeAt(0), Math.max(from + this.surplus, this.asciiFrom));
    return at < 0 ? -1 : at - this.surplus;
  }

  slice(from: number, to: number): string {
    const head = from < this.head.length ? this.head.slice(from, to) : '';
    if (to <= this.head.length) return head;
    const first = Math.max(from, this.head.length) + this.surplus;
    return head + plain.decode(this.bytes.subarray(first, to + this.surplus));
  }
}

import { LossbookError } from '../errors.ts';
import { gunzip, isGzip } from './gunzip.ts';
import { withinLimit } from './limits.ts';
import { unixLineEnds } from './lineEnds.ts';
import type { QualityNote } from './types.ts';

/** The text of a file, with notes on what had to be mended to read it. */
export interface DecodedText {
  readonly text: string;
  readonly notes: readonly QualityNote[];
}

/**
 * Text of a log's bytes: gzip or not, UTF-8, UTF-16 (with or without byte-order mark) or Windows-1252. The
 * content decides, never the name.
 * @throws LossbookError for an empty file, one over the limits, and one that is not text.
 */
export async function decodeText(bytes: Uint8Array, name: string): Promise<DecodedText> {
  const { content, notes } = await unpackedBytes(bytes, name);
  const decoded = textOfBytes(content, name);
  return { text: decoded.text, notes: [...notes, ...decoded.notes] };
}

/** Bytes of a file's text, with notes on what had to be mended to unpack them. */
export interface UnpackedBytes {
  readonly content: Uint8Array;
  readonly notes: readonly QualityNote[];
}

/**
 * Bytes of a log's text, unpacked where they come as gzip, with LF for line ends.
 * @throws LossbookError for an empty file and one over the limits.
 */
export async function unpackedBytes(bytes: Uint8Array, name: string): Promise<UnpackedBytes> {
  if (bytes.length === 0) throw new LossbookError('file-empty', {}, { file: name });
  withinLimit('fileBytes', bytes.length, name);
  const notes: QualityNote[] = [];
  let content = bytes;
  if (isGzip(bytes)) {
    const unpacked = await gunzip(bytes, name);
    content = unpacked.content;
    if (unpacked.cut) {
      notes.push({
        code: 'compressed-file-cut',
        channel: null,
        rows: null,
        count: 1,
        text: 'The compressed file is damaged or breaks off; what could be unpacked before the damage is used.',
      });
    }
  }
  return { content: wideEncoding(content) === null ? unixLineEnds(content) : content, notes };
}

/** Text of a file's bytes. @throws LossbookError `file-empty`, `log-not-text`. */
export function textOfBytes(content: Uint8Array, name: string): DecodedText {
  const notes: QualityNote[] = [];
  let text = toText(content);
  const nulls = countOf(text, '\0');
  if (nulls > 0) {
    if (nulls > 0.02 * text.length) throw new LossbookError('log-not-text', {}, { file: name });
    text = text.replaceAll('\0', '');
    notes.push({
      code: 'null-characters',
      channel: null,
      rows: null,
      count: nulls,
      text: `${nulls} NUL characters were left out; the writing program may have lost data there.`,
    });
  }
  if (text.trim() === '') throw new LossbookError('file-empty', {}, { file: name });
  if (looksBinary(text)) throw new LossbookError('log-not-text', {}, { file: name });
  return { text, notes };
}

/** Bytes from whose zeros UTF-16 is told. */
const SAMPLE_BYTES = 4096;

function toText(bytes: Uint8Array): string {
  const wide = wideEncoding(bytes);
  if (wide !== null) return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // A cut last character, or the one-byte code that older programs write for ° and µ.
    const loose = new TextDecoder('utf-8').decode(bytes);
    const broken = countOf(loose, '\ufffd');
    return broken <= 1 && loose.endsWith('\ufffd')
      ? loose.slice(0, -1)
      : new TextDecoder('windows-1252').decode(bytes);
  }
}

/** UTF-16 by its byte-order mark, or by the zeros that Latin letters and digits leave in it. */
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const length = Math.min(bytes.length, SAMPLE_BYTES) & ~1;
  if (length < 4) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < length; i += 2) {
    if (bytes[i] === 0) even++;
    if (bytes[i + 1] === 0) odd++;
  }
  const half = length / 2;
  if (odd > 0.7 * half && even < 0.1 * half) return 'utf-16le';
  if (even > 0.7 * half && odd < 0.1 * half) return 'utf-16be';
  return null;
}

function countOf(text: string, sign: string): number {
  let count = 0;
  for (let at = text.indexOf(sign); at >= 0; at = text.indexOf(sign, at + 1)) count++;
  return count;
}

/** True where control characters other than blanks, line ends and escapes make up more than a few in a hundred. */
export function looksBinary(text: string): boolean {
  if (text.startsWith('PK\u0003\u0004') || text.startsWith('%PDF-') || text.startsWith('\u0089PNG'))
    return true;
  const sample = text.slice(0, 20_000);
  let odd = 0;
  for (let i = 0; i < sample.length; i++) {
    const code = sample.charCodeAt(i);
    if (
      (code < 32 && code !== 9 && code !== 10 && code !== 13 && code !== 12 && code !== 27) ||
      code === 0xfffd
    ) {
      odd++;
    }
  }
  return odd > 0.03 * sample.length;
}

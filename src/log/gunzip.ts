import { LossbookError } from '../errors.ts';
import { logLimits, withinLimit } from './limits.ts';

/** First bytes of a gzip member (RFC 1952 §2.3.1), and how few a whole one has. */
const MAGIC = [0x1f, 0x8b, 0x08] as const;
const LEAST_MEMBER = 18;
/** The same bytes may stand inside a member by chance: so often is looked further. */
const MOST_TRIES = 8;

interface Unpacked {
  readonly chunks: readonly Uint8Array[];
  readonly length: number;
  /** Whether it is damaged or breaks off. */
  readonly cut: boolean;
}

export function isGzip(bytes: Uint8Array): boolean {
  return bytes[0] === MAGIC[0] && bytes[1] === MAGIC[1];
}

/**
 * What a gzip file holds, up to its damage if it is damaged. All its members are read (RFC 1952 §2.2), also where
 * the platform's own unpacking takes what follows the first for damage, as browsers do.
 * @throws LossbookError `log-too-large`, `log-not-text` where nothing can be unpacked, `file-empty`.
 */
export async function gunzip(
  bytes: Uint8Array,
  name: string,
): Promise<{ content: Uint8Array; cut: boolean }> {
  const parts: Unpacked[] = [];
  let length = 0;
  const take = (part: Unpacked): void => {
    parts.push(part);
    length += part.length;
  };
  const whole = await unpacked(bytes, 0, name);
  let left = bytes;
  if (whole.cut) {
    for (;;) {
      const member = await firstMember(left, length, name);
      if (member === null) break;
      take(member.unpacked);
      left = left.subarray(member.bytes);
    }
  }
  take(left === bytes ? whole : await unpacked(left, length, name));
  const cut = parts.some((part) => part.cut);
  if (length === 0) throw new LossbookError(cut ? 'log-not-text' : 'file-empty', {}, { file: name });
  const content = new Uint8Array(length);
  let at = 0;
  for (const chunk of parts.flatMap((part) => part.chunks)) {
    content.set(chunk, at);
    at += chunk.length;
  }
  return { content, cut };
}

/** The first of several members: one that ends where another begins, which its check sum proves. */
async function firstMember(
  bytes: Uint8Array,
  before: number,
  name: string,
): Promise<{ unpacked: Unpacked; bytes: number } | null> {
  let at = LEAST_MEMBER;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    do at = bytes.indexOf(MAGIC[0], at + 1);
    while (at >= 0 && !(bytes[at + 1] === MAGIC[1] && bytes[at + 2] === MAGIC[2]));
    if (at < 0) return null;
    const part = await unpacked(bytes.subarray(0, at), before, name);
    if (!part.cut) return { unpacked: part, bytes: at };
  }
  return null;
}

/** @param before bytes that were unpacked already, which count towards the limit */
async function unpacked(bytes: Uint8Array, before: number, name: string): Promise<Unpacked> {
  const reader = new Blob([bytes as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('gzip'))
    .getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    let chunk: Uint8Array | undefined;
    try {
      chunk = (await reader.read()).value;
    } catch {
      return { chunks, length, cut: true };
    }
    if (chunk === undefined) return { chunks, length, cut: false };
    length += chunk.length;
    if (before + length > logLimits.textBytes) {
      await reader.cancel().catch(() => {});
      withinLimit('textBytes', before + length, name);
    }
    chunks.push(chunk);
  }
}

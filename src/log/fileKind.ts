import { channelMatches } from './channelMatch.ts';
import { looksLikeJson } from './jsonMark.ts';
import { looksLikeOem } from './oemMark.ts';
import { isDataCell, type Separator, splitLine } from './separator.ts';
import type { ChannelName } from './types.ts';

/** What a file is, by its content. */
export type FileKind = 'card' | 'plan' | 'log' | 'unknown';

const cardFields = ['mission', 'world', 'site', 'target', 'vehicle', 'limits', 'flight', 'return'];
const HEAD_CHARACTERS = 65_536;

/**
 * Tells a mission card, a plan and a log apart by content; the name plays no part. A card is a JSON object with
 * fields of a card and no table; a plan has pitch or throttle against time, altitude or speed, but not both a
 * flown altitude and a flown speed. Compressed files are taken for logs.
 */
export function fileKind(content: Uint8Array | string, _name?: string): FileKind {
  if (typeof content !== 'string' && content[0] === 0x1f && content[1] === 0x8b) return 'log';
  const text = (typeof content === 'string' ? content : textOf(content)).replace(/^\ufeff/u, '');
  if (text.trim() === '') return 'unknown';
  if (looksLikeOem(text)) return 'log';
  if (/^\s*[[{]/u.test(text)) {
    const json = objectOf(text);
    if (json !== null) return objectKind(json);
    const line = objectOf(/^\s*(\S.*)$/mu.exec(text)?.[1] ?? '');
    if (line !== null) return objectKind([line]);
    if (looksLikeJson(text)) return kindOfHeaders(keysIn(text));
  }
  return tableKind(text.slice(0, HEAD_CHARACTERS));
}

function textOf(bytes: Uint8Array): string {
  const wide =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : null;
  return new TextDecoder(wide ?? 'utf-8').decode(bytes);
}

function objectOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

/** The first names in a text that was meant to be JSON. */
function keysIn(text: string): string[] {
  const names = text.slice(0, HEAD_CHARACTERS).matchAll(/"([^"\n]{1,100})"\s*:/gu);
  return [...new Set([...names].slice(0, 500).map((found) => found[1] ?? ''))];
}

function objectKind(value: unknown): FileKind {
  if (typeof value !== 'object' || value === null) return 'unknown';
  if (!Array.isArray(value)) {
    const keys = Object.keys(value);
    const fields = keys.filter((key) => cardFields.includes(key)).length;
    const table = Object.values(value).some((inner) => Array.isArray(inner) && inner.length > 1);
    if (!table && fields >= 1 && fields >= 0.4 * keys.length) return 'card';
  }
  const headers = headersOf(value, 0);
  return headers === null ? 'unknown' : kindOfHeaders(headers);
}

function headersOf(value: unknown, depth: number): string[] | null {
  if (depth > 4 || typeof value !== 'object' || value === null) return null;
  if (Array.isArray(value)) {
    const first: unknown = value[0];
    if (Array.isArray(first))
      return first.every((cell) => typeof cell === 'string') ? (first as string[]) : null;
    return typeof first === 'object' && first !== null ? Object.keys(first) : null;
  }
  const lists = Object.entries(value).filter(
    ([, inner]) => Array.isArray(inner) && typeof inner[0] !== 'object',
  );
  if (lists.length >= 2) return lists.map(([key]) => key);
  for (const inner of Object.values(value)) {
    const found = headersOf(inner, depth + 1);
    if (found !== null) return found;
  }
  return null;
}

function tableKind(text: string): FileKind {
  const lines = text
    .split(/\r\n?|\n/u)
    .filter((line) => line.trim() !== '')
    .slice(0, 60);
  for (const separator of ['\t', ';', '|', ',', 'blanks'] as const satisfies readonly Separator[]) {
    for (const line of lines) {
      const cells = splitLine(line.replace(/^\s*#\s*/u, ''), separator).filter((cell) => cell.trim() !== '');
      if (cells.length < 2 || cells.length > 1000 || cells.some(isDataCell)) continue;
      const kind = kindOfHeaders(cells);
      if (kind !== 'unknown') return kind;
    }
  }
  // Numbers without names can be a log all the same.
  const numeric = lines.filter(
    (line) =>
      splitLine(
        line,
        /[;\t|]/u.test(line) ? (/[;\t|]/u.exec(line)?.[0] as Separator) : line.includes(',') ? ',' : 'blanks',
      ).filter(isDataCell).length >= 2,
  );
  return numeric.length >= 2 ? 'log' : 'unknown';
}

/** The kind of table that has these columns. */
function kindOfHeaders(headers: readonly string[]): FileKind {
  const found = new Set<ChannelName>();
  for (const header of headers.slice(0, 200)) {
    const best = channelMatches(header, null).sort((a, b) => b.confidence - a.confidence)[0];
    if (best !== undefined && best.confidence > 0.5) found.add(best.channel);
  }
  return kindOfChannels(found);
}

/** A plan says where to point and how hard to push, when; masses, forces and pressures come from flying. */
const planChannels: ReadonlySet<ChannelName> = new Set([
  'time',
  'altitude',
  'speed',
  'pitch',
  'throttle',
  'heading',
  'roll',
  'stage',
  'event',
]);

/** The kind of table that has these channels. */
export function kindOfChannels(found: ReadonlySet<ChannelName>): FileKind {
  const has = (...names: ChannelName[]): boolean => names.some((name) => found.has(name));
  const height = has('altitude', 'positionZ', 'positionX');
  const motion = has('speed', 'inertialSpeed', 'verticalSpeed', 'horizontalSpeed', 'velocityX');
  if (has('time') && height && motion) return 'log';
  const onlyPlanned = [...found].every((channel) => planChannels.has(channel));
  if (onlyPlanned && has('pitch', 'throttle') && has('time', 'altitude', 'speed')) return 'plan';
  return has('time') && (height || motion || found.size >= 3) ? 'log' : 'unknown';
}

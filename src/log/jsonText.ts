import { LossbookError } from '../errors.ts';
import { counted } from '../units/figures.ts';
import type { QualityNote } from './types.ts';

/** A JSON file as parsed: one document, or one value per line. */
export interface JsonContent {
  readonly lines: boolean;
  readonly value: unknown;
  readonly notes: readonly QualityNote[];
}

/**
 * Parses a JSON document or JSON lines. NaN and Infinity, which some programs write although JSON has no word
 * for them, count as null; an array of rows that breaks off is read up to its last whole row.
 * @throws LossbookError `log-json-broken` with the line where it breaks.
 */
export function parseJson(text: string, name: string): JsonContent {
  const whole = parsed(text);
  if (whole !== undefined) return { lines: false, value: whole, notes: [] };
  const lines = jsonLines(text);
  if (lines !== null) return lines;
  const wordless = withoutNaN(text);
  const mended = wordless === text ? undefined : parsed(wordless);
  if (mended !== undefined) return { lines: false, value: mended, notes: [] };
  const cut = cutAfterLastRow(wordless);
  const flat = flatRows(wordless);
  if (flat.length >= FEWEST_ROWS && (cut === undefined || wordless.length - cut.length > LONGEST_ROW)) {
    return {
      lines: false,
      value: flat,
      notes: [
        {
          code: 'damaged-file',
          channel: null,
          rows: null,
          count: 1,
          text: `The JSON is damaged; the ${flat.length} rows that are whole are read.`,
        },
      ],
    };
  }
  if (cut !== undefined) {
    return {
      lines: false,
      value: cut.value,
      notes: [
        {
          code: 'cut-file',
          channel: null,
          rows: null,
          count: 1,
          text: 'The JSON breaks off; it is read up to its last whole row, and the flight may have gone on.',
        },
      ],
    };
  }
  throw new LossbookError('log-json-broken', { reason: reasonOf(wordless) }, { file: name });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** Bare NaN and infinities, outside of strings, as null. */
function withoutNaN(text: string): string {
  if (!/NaN|Infinity/u.test(text)) return text;
  return text.replace(/"(?:[^"\\]|\\.)*"|-?\b(?:NaN|Infinity)\b/gu, (found) =>
    found.startsWith('"') ? found : 'null',
  );
}

function jsonLines(text: string): JsonContent | null {
  const first = /^\s*(\S[^\n]*)\n/u.exec(text)?.[1];
  if (first === undefined || !isRow(parsed(withoutNaN(first)))) return null;
  const rows: unknown[] = [];
  let broken = 0;
  let lastBroken = false;
  for (let at = 0; at < text.length; ) {
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    const line = text.slice(at, end).trim();
    at = end + 1;
    if (line === '') continue;
    const row = parsed(line) ?? parsed(withoutNaN(line));
    lastBroken = !isRow(row);
    if (lastBroken) broken++;
    else rows.push(row);
  }
  if (broken > 0.2 * rows.length && !(broken === 1 && lastBroken)) return null;
  const notes: QualityNote[] = [];
  if (broken > 0) {
    notes.push({
      code: 'broken-lines',
      channel: null,
      rows: null,
      count: broken,
      text:
        lastBroken && broken === 1
          ? 'The last line breaks off and is left out; the flight may have gone on.'
          : `Left out as no JSON: ${counted(broken, 'line', 'lines')}.`,
    });
  }
  return { lines: true, value: rows, notes };
}

function isRow(value: unknown): boolean {
  return typeof value === 'object' && value !== null;
}

/** Rows enough for a log. */
const FEWEST_ROWS = 10;
/** Characters behind the last whole row up to which a file is cut rather than damaged. */
const LONGEST_ROW = 5000;

/** Every object without inner ones that is whole, in order. */
function flatRows(text: string): unknown[] {
  const rows: unknown[] = [];
  for (const found of text.matchAll(/\{[^{}]*\}/gu)) {
    const row = parsed(found[0]);
    if (isRow(row)) rows.push(row);
  }
  return rows;
}

/** What can be had of an array of rows whose end is lost: everything up to the last `}` or `]` of a row. */
function cutAfterLastRow(text: string): { readonly value: unknown; readonly length: number } | undefined {
  const closers: string[] = [];
  let lastWhole = -1;
  let closersThere = '';
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i];
    if (inString) {
      if (letter === '\\') i++;
      else if (letter === '"') inString = false;
    } else if (letter === '"') inString = true;
    else if (letter === '{') closers.push('}');
    else if (letter === '[') closers.push(']');
    else if (letter === '}' || letter === ']') {
      if (closers.pop() !== letter) return undefined;
      // A row ends where an array of rows goes on around it.
      if (closers.at(-1) === ']' && closers.length <= 8) {
        lastWhole = i;
        closersThere = closers.toReversed().join('');
      }
    }
    if (closers.length > 1000) return undefined;
  }
  if (lastWhole < 0) return undefined;
  const value = parsed(text.slice(0, lastWhole + 1) + closersThere);
  return value === undefined ? undefined : { value, length: lastWhole + 1 };
}

/** Where a text stops being JSON, for people; engines word it differently. */
function reasonOf(text: string): string {
  try {
    JSON.parse(text);
  } catch (error) {
    const words = String(error);
    const line = /line (\d+)/u.exec(words)?.[1];
    if (line !== undefined) return `line ${line}`;
    const position = /position (\d+)/u.exec(words)?.[1];
    if (position !== undefined) return `line ${text.slice(0, Number(position)).split('\n').length}`;
    const token = /token '?(\S)'?/u.exec(words)?.[1];
    if (token !== undefined) return `“${token}” where it cannot stand`;
  }
  return 'its end is missing';
}

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import schema from '../src/review/review.schema.json' with { type: 'json' };

const source = resolve(import.meta.dirname, '../src');
const notes = readFileSync(join(source, 'METHODS.md'), 'utf8');
/** What stands in code quotes. */
const quoted = new Set([...notes.matchAll(/`([^`\n]+)`/gu)].map(([, text]) => text ?? ''));
const read = (file: string): string => readFileSync(join(source, file), 'utf8');
const engine = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => file.endsWith('.ts') && !/^(?:app|cli)\//u.test(file));

/** Names of a union of texts, `type NAME = 'a' | 'b'`, as its file writes it. */
function unionOf(file: string, name: string): string[] {
  const body = new RegExp(`type ${name} =([^;]+);`, 'u').exec(read(file))?.[1] ?? '';
  return [...body.matchAll(/^ *(?:\| )?'([^']+)'/gmu)].map(([, word]) => word ?? '');
}

/** Every name in the schema whose value is a figure, or a peak (a figure, and when and where). */
function figureNames(node: unknown, names = new Set<string>()): Set<string> {
  if (typeof node !== 'object' || node === null) return names;
  if ('properties' in node && typeof node.properties === 'object' && node.properties !== null) {
    for (const [name, value] of Object.entries(node.properties)) {
      const kind = (value as { readonly $ref?: string }).$ref;
      if (kind === '#/$defs/figure' || kind === '#/$defs/peak') names.add(name);
    }
  }
  for (const value of Object.values(node)) figureNames(value, names);
  // The figure inside a peak is no name of its own.
  names.delete('figure');
  return names;
}

const missing = (names: Iterable<string>): string[] => [...names].filter((name) => !quoted.has(name));

describe('the method notes', () => {
  test('name only files that exist', () => {
    const files = [...quoted].filter((text) => /^[\w/]+\.ts$/u.test(text));
    expect(files.length).toBeGreaterThan(90);
    expect(files.filter((file) => !existsSync(join(source, file)))).toEqual([]);
  });

  test('tell of every figure of a review, and of every channel', () => {
    const figures = figureNames(schema);
    expect(figures.size).toBeGreaterThan(50);
    expect(missing(figures)).toEqual([]);
    const channels = unionOf('review/document/strips.ts', 'StripName');
    expect(channels.length).toBeGreaterThan(20);
    expect(missing(channels)).toEqual([]);
  });

  test('tell of every finding', () => {
    const families = readdirSync(join(source, 'review'), { recursive: true, encoding: 'utf8' })
      .filter((file) => /findings/u.test(file) && file.endsWith('.ts'))
      .map((file) => read(join('review', file)));
    const literal = families.flatMap((text) =>
      [...text.matchAll(/code: '([a-z-]+)'/gu)].map((m) => m[1] ?? ''),
    );
    const codes = new Set([...unionOf('review/findings/types.ts', 'FindingCode'), ...literal]);
    expect(codes.size).toBeGreaterThan(30);
    expect(missing(codes)).toEqual([]);
  });

  test.each([
    ['verdict', 'review/document/verdict.ts', 'VerdictCode', 11],
    ['event', 'flight/events.ts', 'FlightEventName', 18],
    ['phase', 'flight/phases.ts', 'FlightPhaseName', 10],
  ])('tell of every %s', (_, file, name, least) => {
    const names = unionOf(file, name);
    expect(names.length).toBeGreaterThanOrEqual(least);
    expect(missing(names)).toEqual([]);
  });

  test('name every file whose comments cite an author and a year', () => {
    const cites =
      /\*.*\b[A-Z][a-zé]+(?:,? (?:& |and )?[A-Z][a-zé]+)* \(?1[89]\d\d\b|\*.*\b[A-Z][a-zé]+ 20[01]\d\b/u;
    const citing = engine.filter((file) => cites.test(read(file)) && !/^(?:review|exchange)\//u.test(file));
    expect(citing.length).toBeGreaterThan(40);
    expect(missing(citing)).toEqual([]);
  });
});

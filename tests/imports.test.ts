import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

/** The rooms from top to bottom: one may import only from those above it, and from the errors and suggestions. */
const rooms = [
  'units',
  'world',
  'orbit',
  'log',
  'mission',
  'flight',
  'ledger',
  'plan',
  'refly',
  'review',
  'attempts',
  'exchange',
  'cli',
  'app',
];
const engineRooms = rooms.slice(0, rooms.indexOf('exchange') + 1);
const source = resolve(import.meta.dirname, '../src');

const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => file.replaceAll('\\', '/'));

const roomOf = (file: string) => (file.includes('/') ? (file.split('/')[0] ?? '') : '');

/** What a file imports, as written: static and dynamic imports, exports from elsewhere, addresses of workers. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(source, file), 'utf8');
  const patterns = [/\bfrom\s+'([^']+)'/g, /\bimport\s*\(?\s*'([^']+)'/g, /new URL\(\s*'([^']+)'/g];
  return patterns.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] ?? ''));
}

/** The text without comments, strings and names after a point: identifiers that it uses by themselves. */
function bareText(file: string): string {
  return readFileSync(join(source, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, "''");
}

test('every file of the source lies in a known room', () => {
  const others = files.filter((file) => !rooms.includes(roomOf(file)));
  expect(others.sort()).toEqual(['errors.ts', 'index.ts', 'suggest.ts']);
});

test('a room imports only from rooms above it', () => {
  const offences = files.flatMap((file) => {
    const room = rooms.indexOf(roomOf(file));
    const inside = importsOf(file)
      .filter((path) => path.startsWith('.'))
      .map((path) => relative(source, join(dirname(join(source, file)), path)).replaceAll('\\', '/'))
      .filter((path) => /\.tsx?$/.test(path));
    return inside
      .filter(
        (path) =>
          roomOf(path) !== '' &&
          rooms.indexOf(roomOf(path)) > (file === 'index.ts' ? rooms.indexOf('exchange') : room),
      )
      .map((path) => `${file} imports ${path}`);
  });
  expect(offences).toEqual([]);
});

test('only the command knows Node', () => {
  const offences = files
    .filter((file) => roomOf(file) !== 'cli')
    .flatMap((file) =>
      importsOf(file)
        .filter((path) => path.startsWith('node:'))
        .map((path) => `${file} imports ${path}`),
    );
  expect(offences).toEqual([]);
});

test('the engine uses nothing that only Node or only a page has', () => {
  const foreign =
    /(?<![.\w])(?:document|window|navigator|localStorage|process|Buffer|require|__dirname)\s*[.(]/;
  const engine = files.filter((file) => engineRooms.includes(roomOf(file)) || roomOf(file) === '');
  expect(engine.length).toBeGreaterThan(20);
  expect(engine.filter((file) => foreign.test(bareText(file)))).toEqual([]);
});

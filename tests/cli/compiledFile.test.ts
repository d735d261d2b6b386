import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { cacheFolder } from '../../src/cli/cacheFolder.ts';
import { CompiledFile } from '../../src/cli/compiledFile.ts';

const root = mkdtempSync(join(tmpdir(), 'lossbook-compiled-'));
afterAll(() => rmSync(root, { recursive: true }));

let count = 0;
/** A program that loads a file beside it, and an empty folder for what is compiled of it. */
function setting(): { program: string; folder: string } {
  const folder = join(root, `cache-${++count}`);
  mkdirSync(folder);
  const program = join(root, `program-${count}.js`);
  writeFileSync(program, "exports.twice = (x) => 2 * x; exports.later = () => require('./beside.cjs');");
  writeFileSync(
    join(root, 'beside.cjs'),
    "module.exports = { path: require('node:path').basename(__filename) };",
  );
  return { program, folder };
}

interface Program {
  twice(x: number): number;
  later(): { path: string };
}

const run = (program: string, folder: string | null, digest = 'one'): Program => {
  const file = new CompiledFile(program, digest, folder);
  const loaded = file.load() as Program;
  expect(loaded.twice(21)).toBe(42);
  file.keep();
  return loaded;
};

test('what was compiled is kept for its owner alone, and taken from then on', () => {
  const { program, folder } = setting();
  const loaded = run(program, folder);
  expect(loaded.later().path).toBe('beside.cjs');
  const [kept] = readdirSync(folder);
  const path = join(folder, kept!);
  const { ino, mode } = statSync(path);
  if (process.platform !== 'win32') expect(mode & 0o777).toBe(0o600);
  run(program, folder);
  expect(readdirSync(folder)).toEqual([kept]);
  expect(statSync(path).ino).toBe(ino);
});

test('another text, or bytes that are no compiled code, are written anew', () => {
  const { program, folder } = setting();
  run(program, folder);
  const path = join(folder, readdirSync(folder)[0]!);
  const first = readFileSync(path);
  run(program, folder, 'two');
  expect(readFileSync(path).toString('latin1', 0, 64)).not.toBe(first.toString('latin1', 0, 64));
  const whole = readFileSync(path);
  for (const at of [0, 40, 300, whole.length - 1]) {
    const spoiled = Buffer.from(whole);
    spoiled[at] = spoiled[at]! ^ 1;
    writeFileSync(path, spoiled);
    run(program, folder, 'two');
    expect(readFileSync(path)[at]).toBe(whole[at]);
  }
  writeFileSync(path, whole.subarray(0, 100));
  run(program, folder, 'two');
  expect(readFileSync(path).length).toBe(whole.length);
});

test('without a folder that can be written nothing is kept and all the same goes on', () => {
  const { program, folder } = setting();
  run(program, null);
  run(program, join(folder, 'not there'));
  expect(readdirSync(folder)).toEqual([]);
});

test('the folder is the user’s own and closed to others, or there is none', () => {
  const home = join(root, 'caches');
  const made = cacheFolder({ XDG_CACHE_HOME: home });
  expect(made).toBe(join(home, 'lossbook'));
  expect(cacheFolder({ XDG_CACHE_HOME: home, NODE_DISABLE_COMPILE_CACHE: '1' })).toBeNull();
  if (process.platform === 'win32') return;
  expect(statSync(made!).mode & 0o777).toBe(0o700);
  chmodSync(made!, 0o777);
  expect(cacheFolder({ XDG_CACHE_HOME: home })).toBeNull();
  const elsewhere = join(root, 'elsewhere');
  mkdirSync(elsewhere);
  symlinkSync(made!, join(elsewhere, 'lossbook'));
  expect(cacheFolder({ XDG_CACHE_HOME: elsewhere })).toBeNull();
  const file = join(root, 'file');
  writeFileSync(file, '');
  expect(cacheFolder({ XDG_CACHE_HOME: file })).toBeNull();
});

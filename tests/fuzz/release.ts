/**
 * Reads a million spoiled copies of the corpus and prints how often each outcome came; any outcome that is neither a
 * sound log nor a catalogued error is written to a folder, to become a file of the corpus. Run before a release:
 *   npx vite build --ssr tests/fuzz/release.ts --outDir node_modules/.fuzz && node node_modules/.fuzz/release.js
 * INPUTS and SEED change how many and which; MINUTES ends it earlier.
 */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom } from '../../src/attempts/seededRandom.ts';
import { outcomeOf } from './unsound.ts';

const inputs = Number(process.env.INPUTS ?? 1_000_000);
const seed = Number(process.env.SEED ?? 1);
const minutes = Number(process.env.MINUTES ?? Number.POSITIVE_INFINITY);

const folder = 'tests/corpus';
const ending = '.expected.json';
const corpus = readdirSync(folder)
  .filter((name) => !name.endsWith(ending))
  .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }))
  // Short files say as much in less time.
  .filter(({ bytes }) => bytes.length < 60_000);

const random = seededRandom(seed);
const below = (n: number): number => Math.floor(random() * n);
const pick = <T>(list: readonly T[]): T => list[below(list.length)] as T;
const encode = (text: string) => new TextEncoder().encode(text);
const telling = [
  '',
  '\n',
  '\r',
  '\r\n',
  ',',
  ';',
  '\t',
  '"',
  '""',
  '\0',
  '-',
  '.',
  ':',
  '{',
  '}',
  '[',
  ']',
  '[[',
  'null',
  'NaN',
  '1e999',
  '-0',
  '1e-320',
  '12345678901234567890',
  '°',
  '\ufeff',
  '\u202e',
  '\u001b[2J',
  '__proto__',
  '=1+1',
  '#',
  '//',
  ' ',
  '        ',
].map(encode);

/** A copy with up to six places changed: bytes flipped, overwritten, taken out, put in, doubled, moved or cut off. */
function spoiled(from: Uint8Array): Uint8Array {
  let bytes = from.slice();
  for (let k = 1 + below(6); k > 0; k--) {
    const at = below(bytes.length + 1);
    const length = below(random() < 0.8 ? 8 : 400);
    const before = bytes.subarray(0, at);
    const rest = bytes.subarray(at);
    const way = below(8);
    if (way === 0 && rest.length > 0) bytes[at] = bytes[at]! ^ (1 << below(8));
    else if (way === 1 && rest.length > 0) bytes[at] = below(256);
    else if (way === 2) bytes = joined(before, rest.subarray(length));
    else if (way === 3) bytes = joined(before, pick(telling), rest);
    else if (way === 4) bytes = joined(before, rest.subarray(0, length), rest);
    else if (way === 5) bytes = joined(before, pick(corpus).bytes.subarray(at, at + length), rest);
    else if (way === 6) bytes = joined(before, pick(telling), rest.subarray(length));
    else if (random() < 0.3) bytes = before.slice();
  }
  return bytes;
}

function joined(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

const counts = new Map<string, number>();
const findings = mkdtempSync(join(tmpdir(), 'fuzz-'));
let found = 0;
let slowest = { ms: 0, name: '' };
const began = performance.now();
let done = 0;
for (; done < inputs && performance.now() - began < minutes * 60_000; done++) {
  const { name, bytes } = pick(corpus);
  const input = spoiled(bytes);
  const start = performance.now();
  const { outcome, wrong } = await outcomeOf(input);
  const ms = performance.now() - start;
  if (ms > slowest.ms) slowest = { ms, name };
  counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
  if (wrong === null) continue;
  if (found++ > 50) continue;
  const file = join(findings, `${done}-${name}`);
  writeFileSync(file, input);
  console.log(`${file}: ${wrong}`);
}
const minutesTaken = (performance.now() - began) / 60_000;
console.log(
  `${done} inputs, seed ${seed}, ${minutesTaken.toFixed(1)} min; slowest ${slowest.ms.toFixed(0)} ms (${slowest.name})`,
);
for (const [outcome, count] of [...counts].sort((a, b) => b[1] - a[1]))
  console.log(`${String(count).padStart(9)}  ${outcome}`);
console.log(found === 0 ? 'every outcome is sound' : `${found} unsound outcomes`);
process.exitCode = found === 0 ? 0 : 1;

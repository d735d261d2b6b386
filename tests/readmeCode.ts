import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

export const readme = readFileSync(resolve(import.meta.dirname, '../README.md'), 'utf8');

/** The README's code in one language, block by block; '' = of no language. */
export function codeIn(language: string): string[] {
  return [...readme.matchAll(/^```(\w*)\n(.*?)^```$/gmsu)].flatMap(([, named, code]) =>
    named === language && code !== undefined ? [code] : [],
  );
}

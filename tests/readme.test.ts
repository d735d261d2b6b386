import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commands } from '../src/cli/commands.ts';
import schema from '../src/review/review.schema.json' with { type: 'json' };
import type { StripName } from '../src/review/types.ts';
import { codeIn, readme } from './readmeCode.ts';

const root = resolve(import.meta.dirname, '..');

interface Node {
  readonly properties?: Readonly<Record<string, Node>>;
  readonly $ref?: string;
}

/** True where the schema of a review has this path of names. */
function hasPath(path: readonly string[]): boolean {
  const whole = schema as unknown as Node & { readonly $defs: Readonly<Record<string, Node>> };
  let node: Node | undefined = whole;
  for (const name of path) {
    if (node?.$ref !== undefined) node = whole.$defs[node.$ref.replace('#/$defs/', '')];
    node = node?.properties?.[name];
  }
  return node !== undefined;
}

describe('the README', () => {
  test('its queries ask for what a line and a Parquet file hold', () => {
    const queries = codeIn('sql').join('\n');
    const paths = [...queries.matchAll(/\breview((?:\.\w+)+)/gu)].map(([, path]) =>
      path?.slice(1).split('.'),
    );
    expect(paths.length).toBeGreaterThan(8);
    expect(paths.filter((path) => path === undefined || !hasPath(path))).toEqual([]);
    const column: StripName = 'dynamicPressure_Pa';
    expect(queries).toContain(column);
  });

  test('its commands and options are there', () => {
    const lines = [...codeIn(''), ...codeIn('sh')]
      .flatMap((code) => code.split('\n'))
      .filter((line) => line.startsWith('lossbook '));
    expect(lines.length).toBeGreaterThan(8);
    for (const line of lines) {
      const command = commands.find((c) => c.name === line.split(' ')[1]);
      expect(command, line).toBeDefined();
      const known = command?.options.map((o) => o.name);
      for (const [, option] of line.matchAll(/ --(\w+)/gu)) expect(known, line).toContain(option);
    }
    const all = ['help', 'version', ...commands.flatMap((c) => c.options.map((o) => o.name))];
    const named = [...readme.matchAll(/(?<=[\s`(])--([a-z]+)/gu)].map(([, option]) => option ?? '');
    expect(named.filter((option) => !all.includes(option))).toEqual([]);
  });

  test('its npm scripts and the files that it links to are there', () => {
    const { scripts } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as {
      readonly scripts: Readonly<Record<string, string>>;
    };
    const run = [...readme.matchAll(/npm run (\w+)/gu)].map(([, name]) => name ?? '');
    expect(run.filter((name) => scripts[name] === undefined)).toEqual([]);
    const links = [...readme.matchAll(/\]\(([^)#:]+)\)/gu)].map(([, link]) => link ?? '');
    expect(links.length).toBeGreaterThan(1);
    expect(links.filter((link) => !existsSync(resolve(root, link)))).toEqual([]);
  });
});

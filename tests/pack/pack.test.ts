import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { version } from '../../package.json';
import { codeIn } from '../readmeCode.ts';

const root = resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'lossbook-pack-'));
const user = join(folder, 'user');
/** What npm says of the tarball. */
let packed: { readonly filename: string; readonly size: number; readonly files: readonly { path: string }[] };

function run(command: string, args: readonly string[], cwd = user): string {
  return execFileSync(command, args, { cwd, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } });
}

/** A user's program, run by Node. */
function program(name: string, text: string): string {
  writeFileSync(join(user, name), text);
  return run(process.execPath, [name]);
}

beforeAll(() => {
  for (const built of ['dist/engine/index.js', 'dist/cli/lossbook.js', 'dist/page/index.html']) {
    if (!existsSync(join(root, built))) throw new Error(`${built} is not there: npm run build makes it`);
  }
  const told = run('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], root);
  packed = (JSON.parse(told) as (typeof packed)[])[0] ?? packed;
  mkdirSync(user);
  writeFileSync(join(user, 'package.json'), '{ "name": "user", "private": true, "type": "module" }\n');
  const quiet = ['--offline', '--no-audit', '--no-fund', '--ignore-scripts'];
  run('npm', ['install', ...quiet, join(folder, packed.filename)]);
  for (const name of ['osselby-short.csv', 'osselby-short.mission.json']) {
    cpSync(join(root, 'tests/flights', name), join(user, name));
  }
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the tarball', () => {
  test('holds the engine with its types, the command, the page, the schemas and the samples', () => {
    const paths = packed.files.map((f) => f.path);
    expect(paths).toEqual(
      expect.arrayContaining([
        'LICENSE',
        'README.md',
        'package.json',
        'dist/engine/index.js',
        'dist/engine/index.d.ts',
        'dist/cli/lossbook.js',
        'dist/page/index.html',
        'src/review/review.schema.json',
        'src/mission/missionCard.schema.json',
        'src/METHODS.md',
        'dist/page/samples/bobstay-medlar-4.csv',
      ]),
    );
    const known =
      /^(?:LICENSE|(?:README|DEVELOPERS)\.md|package\.json|dist\/(?:engine|cli|page)\/.+|src\/METHODS\.md|src\/(?:review|mission)\/\w+\.schema\.json)$/;
    expect(paths.filter((path) => !known.test(path))).toEqual([]);
    // Of the engine one file of code, and the types that its entry leads to.
    const engine = paths.filter((path) => path.startsWith('dist/engine/'));
    expect(engine.filter((path) => !path.endsWith('.d.ts'))).toEqual([
      'dist/engine/index.js',
      'dist/engine/licenses.txt',
    ]);
    expect(engine.length).toBeLessThan(100);
    const largest_bytes = 1.8e6;
    expect(packed.size).toBeLessThan(largest_bytes);
  });

  // What the MIT license asks for in all copies of a package.
  test.each(['engine', 'cli', 'page'])('names the authors and licenses of what is inside dist/%s', (part) => {
    const told = readFileSync(join(root, 'dist', part, 'licenses.txt'), 'utf8');
    expect(told).toMatch(/^## papaparse - [\d.]+ \(MIT\)$/mu);
    expect(told).toContain('Copyright (c) 2015 Matthew Holt');
    if (part === 'page')
      for (const name of ['preact', '@preact/signals', 'idb', 'uplot'])
        expect(told).toContain(`## ${name} - `);
  });

  test('needs no other package', () => {
    const installed = JSON.parse(readFileSync(join(user, 'node_modules/lossbook/package.json'), 'utf8'));
    expect(installed.dependencies ?? {}).toEqual({});
    expect(existsSync(join(user, 'node_modules/preact'))).toBe(false);
  });
});

describe('in an empty folder', () => {
  test('the command reviews a flight', () => {
    const command = join(user, 'node_modules/.bin/lossbook');
    expect(run(command, ['--version'])).toBe(`lossbook ${version}\n`);
    expect(run(command, ['review', 'osselby-short.csv'])).toMatch(/\n\nNot in orbit: 361 m\/s short/);
    run(command, ['review', 'osselby-short.csv', '--report', 'report.html']);
    expect(readFileSync(join(user, 'report.html'), 'utf8')).toContain('<h1>Not in orbit: 361');
  });

  test('a program imports the engine and reviews a flight', () => {
    const told = program(
      'use.js',
      `import { readFileSync } from 'node:fs';
import { review, reportHtml } from 'lossbook';
const analysis = await review({
  log: { name: 'osselby-short.csv', bytes: readFileSync('osselby-short.csv') },
  card: { name: 'card', text: readFileSync('osselby-short.mission.json', 'utf8') },
});
console.log(analysis.review.verdict.code, Math.round(analysis.review.budget.shortfall.value));
console.log(reportHtml(analysis).startsWith('<!doctype html>'));
`,
    );
    expect(told).toBe('suborbital-out-of-propellant 361\ntrue\n');
  });

  test('an error of the engine is the one that it exports', () => {
    const told = program(
      'fail.js',
      `import { LossbookError, review } from 'lossbook';
try {
  await review({ log: { name: 'none.csv', bytes: new Uint8Array(0) } });
} catch (error) {
  console.log(error instanceof LossbookError, error.code, error.where.file);
}
`,
    );
    expect(told).toBe('true file-empty none.csv\n');
  });

  test.each(codeIn('js').map((code, k) => [k + 1, code] as const))(
    'example %i of the README runs',
    (k, code) => {
      for (const [log, like] of [
        ['flight', 'osselby-short'],
        ['second', 'osselby-short'],
      ]) {
        cpSync(join(user, `${like}.csv`), join(user, `${log}.csv`));
        cpSync(join(user, `${like}.mission.json`), join(user, `${log}.mission.json`));
      }
      expect(program(`readme-${k}.js`, code)).toMatch(
        k === 1 ? /^Not in orbit: 361 m\/s short.*\n-361/s : /^2\n$/,
      );
    },
  );

  test('the commands of the README run', () => {
    mkdirSync(join(user, 'flights'));
    for (const log of ['one', 'two']) {
      cpSync(join(user, 'osselby-short.csv'), join(user, `flights/${log}.csv`));
      cpSync(join(user, 'osselby-short.mission.json'), join(user, `flights/${log}.mission.json`));
    }
    const lines = codeIn('sh').flatMap((code) => code.split('\n').filter((l) => l.startsWith('lossbook ')));
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) run('sh', ['-c', `PATH="$PWD/node_modules/.bin:$PATH" ${line}`]);
    for (const file of ['today.jsonl', 'all.jsonl'])
      expect(readFileSync(join(user, file), 'utf8').split('\n')).toHaveLength(3);
    expect(readFileSync(join(user, 'one.parquet'), 'latin1')).toMatch(/^PAR1/);
  });

  test('the schemas are found by name', () => {
    const told = program(
      'schemas.js',
      `import card from 'lossbook/missionCard.schema.json' with { type: 'json' };
import document from 'lossbook/review.schema.json' with { type: 'json' };
console.log(card.title, '|', document.title);
`,
    );
    expect(told).toBe('Lossbook mission card | Lossbook review\n');
  });

  test.each(['bundler', 'nodenext'])('its types hold in a strict program (%s)', (resolution) => {
    const text = `import { type Analysis, type Figure, LossbookError, oem, review } from 'lossbook';
const analysis: Analysis = await review({ log: { name: 'x.csv', bytes: new Uint8Array(3) }, world: 'moon' });
const margin: Figure = analysis.review.budget.margin;
export const value: number | null = margin.value;
export const message: string = oem(analysis, { created_ms: 0 });
export const isOurs = (error: unknown): boolean => error instanceof LossbookError && error.code === 'file-empty';
// @ts-expect-error a log needs a name
export const wrong = review({ log: { bytes: new Uint8Array(3) } });
`;
    writeFileSync(join(user, 'typed.ts'), text);
    const options = {
      strict: true,
      noEmit: true,
      target: 'ES2023',
      lib: ['ES2023', 'DOM'],
      types: [],
      module: resolution === 'nodenext' ? 'NodeNext' : 'ESNext',
      moduleResolution: resolution,
      skipLibCheck: false,
    };
    writeFileSync(
      join(user, 'tsconfig.json'),
      JSON.stringify({ compilerOptions: options, files: ['typed.ts'] }),
    );
    expect(run(process.execPath, [join(root, 'node_modules/typescript/lib/tsc.js'), '-p', '.'])).toBe('');
  });
});

/** Size of a user's program after bundling, characters. */
async function bundled(text: string): Promise<number> {
  writeFileSync(join(user, 'entry.js'), text);
  const result = await build({
    root: user,
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: true, lib: { entry: join(user, 'entry.js'), formats: ['es'] } },
  });
  const [bundle] = Array.isArray(result) ? result : [];
  return bundle?.output.reduce((sum, o) => sum + (o.type === 'chunk' ? o.code.length : 0), 0) ?? 0;
}

test('a program for the browser that takes one function leaves most of the engine out', async () => {
  const whole = await bundled(`export * from 'lossbook';`);
  const one = await bundled(`export { LossbookError } from 'lossbook';`);
  // Measured: 88 kB of 568 kB; tables and schemas that are made at the start stay.
  expect(one).toBeGreaterThan(0);
  expect(one).toBeLessThan(0.2 * whole);
});

import { createHash } from 'node:crypto';
import { createReadStream, existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Plugin, Rolldown } from 'vite';
import { defineConfig } from 'vitest/config';
import { ownLoader, pageChunks, pageOnly, sharedWorker } from './pageChunks.ts';

const samplesFolder = 'sample-logs';

/** What the bundled packages ask to be told: their names, authors and licenses, beside the code that holds them. */
const license = { fileName: 'licenses.txt' };

/** Names of the sample flights' files as `sample-logs/index.json` lists them, itself first. */
function sampleFiles(): string[] {
  const list = JSON.parse(readFileSync(join(samplesFolder, 'index.json'), 'utf8')) as {
    log: string;
    card?: string | null;
    plan?: string | null;
  }[];
  return ['index.json', ...list.flatMap((f) => [f.log, f.card, f.plan].filter((n) => typeof n === 'string'))];
}

/**
 * Puts the sample flights beside the page, fetched on demand, and no list of opened flights (`lossbook open` answers
 * the same address with its own, by which the page knows who serves it).
 */
function besideThePage(): Plugin {
  return {
    name: 'beside-the-page',
    generateBundle() {
      if (this.environment.name !== 'client') return;
      for (const file of new Set(sampleFiles())) {
        this.emitFile({
          type: 'asset',
          fileName: `samples/${file}`,
          source: readFileSync(join(samplesFolder, file)),
        });
      }
      this.emitFile({ type: 'asset', fileName: 'open.json', source: 'null' });
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const path = decodeURIComponent((request.url ?? '').split('?')[0] ?? '');
        if (path === '/open.json') return response.end('null');
        const file = sampleFiles().find((f) => path === `/samples/${f}`);
        if (file === undefined || !existsSync(join(samplesFolder, file))) return next();
        createReadStream(join(samplesFolder, file)).pipe(response);
      });
    },
  };
}

/** Builds the service worker that keeps the page for work without its server, and tells it the page's files. */
function offlineWorker(): Plugin {
  const fileName = 'offline.js';
  return {
    name: 'offline-worker',
    apply: 'build',
    buildStart() {
      if (this.environment.name !== 'client') return;
      this.emitFile({ type: 'chunk', id: 'src/app/offlineWorker.ts', fileName });
    },
    generateBundle: {
      // After every other file is there.
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[fileName];
        if (worker?.type !== 'chunk') return;
        const files = Object.values(bundle).filter((f) => ![fileName, 'open.json'].includes(f.fileName));
        const hash = createHash('sha256');
        for (const file of files) {
          hash.update(file.fileName).update(file.type === 'chunk' ? file.code : file.source);
        }
        const names = files.map((f) => (f.fileName === 'index.html' ? './' : `./${f.fileName}`));
        worker.code = worker.code
          .replace('__PAGE_FILES__', JSON.stringify(names))
          .replace('__PAGE_VERSION__', JSON.stringify(hash.digest('hex').slice(0, 12)));
      },
    },
  };
}

/** The development server injects styles and a reload socket, which the page's policy forbids: lift it there. */
function liftPolicyWhileServing(): Plugin {
  return {
    name: 'lift-policy-while-serving',
    apply: 'serve',
    transformIndexHtml: (html) => html.replace(/\s*<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
  };
}

/**
 * Takes away the engine's declarations that its entry does not lead to: the compiler writes one for every file that it
 * looks at. Belongs to the last of the builds.
 */
function onlyReachedTypes(): Plugin {
  const folder = 'dist/engine';
  return {
    name: 'only-reached-types',
    apply: 'build',
    closeBundle() {
      const reached = new Set<string>();
      const follow = (file: string): void => {
        if (reached.has(file)) return;
        reached.add(file);
        for (const [, path] of readFileSync(file, 'utf8').matchAll(/(?:from |import\()'(\.[^']+)\.tsx?'/gu))
          follow(join(dirname(file), `${path}.d.ts`));
      };
      const entry = join(folder, 'index.d.ts');
      if (!existsSync(entry)) return;
      follow(entry);
      for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
        const file = join(folder, name);
        if (file.endsWith('.d.ts') && !reached.has(file)) rmSync(file);
      }
    },
  };
}

/** Self-contained code for Node: what `--ssr ENTRY` names, with its packages inside. */
function nodeBundle(outDir: string, minify: boolean, output: Rolldown.OutputOptions) {
  return {
    ssr: { noExternal: true as const },
    build: { outDir, target: 'node20', minify, license, rolldownOptions: { output } },
  };
}

export default defineConfig(({ mode }) => {
  if (mode === 'engine')
    return nodeBundle('dist/engine', false, { entryFileNames: 'index.js', codeSplitting: false });
  // What a command does not need is not read: a review starts without report, comparison and server.
  if (mode === 'cli')
    return {
      ...nodeBundle('dist/cli', true, {
        entryFileNames: 'lossbook.js',
        chunkFileNames: '[name].js',
        banner: (chunk) => (chunk.isEntry ? '#!/usr/bin/env node' : ''),
      }),
      plugins: [onlyReachedTypes()],
    };
  return {
    base: './',
    oxc: { jsx: { runtime: 'automatic' as const, importSource: 'preact' } },
    plugins: [besideThePage(), offlineWorker(), sharedWorker(), ownLoader(), liftPolicyWhileServing()],
    worker: { format: 'es' as const },
    build: {
      outDir: 'dist/page',
      target: 'es2023',
      license,
      modulePreload: { polyfill: false, resolveDependencies: pageOnly },
      assetsInlineLimit: 0,
      rolldownOptions: { output: { codeSplitting: pageChunks() } },
    },
    test: {
      include: ['tests/**/*.test.ts'],
      // Pages are read by axe and driven in a browser on machines of two cores.
      testTimeout: 90_000,
      hookTimeout: 60_000,
      // A browser's test mostly waits for the browser: a second one uses what is left of two cores.
      maxWorkers: 2,
    },
  };
});

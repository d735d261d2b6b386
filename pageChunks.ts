import { basename, join } from 'node:path';
import type { Plugin, Rolldown } from 'vite';

/** Where code starts that the page loads without being asked: itself, its analysis worker, the first review. */
const pageStart = 'src/app/main.tsx';
const workerStart = 'src/app/worker.ts';
const reviewStart = 'src/app/screens/ReviewScreen.tsx';

const fileOf = (path: string): string => join(import.meta.dirname, path);

/**
 * Makes the analysis worker part of the page's own build, so that code which both need is there once: by itself the
 * bundler builds a worker apart, with copies of its own.
 */
export function sharedWorker(): Plugin {
  const address = "new URL('./worker.ts', import.meta.url)";
  let reference = '';
  return {
    name: 'shared-worker',
    apply: 'build',
    enforce: 'pre',
    transform: {
      filter: { id: /\/src\/app\/analyst\.ts$/u },
      handler(code) {
        if (!code.includes(address)) this.error(`the worker is no longer started by ${address}`);
        reference = this.emitFile({ type: 'chunk', id: workerStart, name: 'worker' });
        return code.replace(address, `import.meta.ROLLUP_FILE_URL_${reference}`);
      },
    },
    generateBundle(_options, bundle) {
      // Another program than the page starts no worker.
      if (reference === '') return;
      // Where the worker's entry only leads to the file that holds it, that is started: one round to the server less.
      const entry = bundle[this.getFileName(reference)];
      const [held] = entry?.type === 'chunk' && entry.moduleIds.length === 0 ? entry.imports : [];
      if (entry === undefined || held === undefined) return;
      for (const file of Object.values(bundle))
        if (file.type === 'chunk') file.code = file.code.replaceAll(basename(entry.fileName), basename(held));
      delete bundle[entry.fileName];
    },
  };
}

/** Puts the page's own loader in place of the bundler's, which knows a page only and no worker. */
export function ownLoader(): Plugin {
  return {
    name: 'own-loader',
    apply: 'build',
    enforce: 'pre',
    load: {
      filter: { id: /^\0vite\/preload-helper\.js$/u },
      handler: () =>
        `export { loadWith as __vitePreload } from ${JSON.stringify(fileOf('src/app/fetchAhead.ts'))};`,
    },
  };
}

/** What an `import()` has the browser fetch beside it: files that it needs; a worker cannot ask for that. */
export const pageOnly = (_file: string, needed: string[], { hostId }: { hostId: string }): string[] =>
  hostId.includes('/worker-') ? [] : needed;

/** What is reached from a start, each module with the starts that need it at once: the first, and every `import()`. */
function startsOfModules(first: string, context: Rolldown.ChunkingContext): Map<string, ReadonlySet<string>> {
  const starts = new Map<string, Set<string>>();
  const seen = new Set<string>();
  const open = [fileOf(first)];
  for (let start = open.pop(); start !== undefined; start = open.pop()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const reached = [start];
    for (let id = reached.pop(); id !== undefined; id = reached.pop()) {
      const info = context.getModuleInfo(id);
      const known = starts.get(id) ?? new Set();
      if (info === null || known.has(start)) continue;
      starts.set(id, known.add(start));
      reached.push(...info.importedIds);
      open.push(...info.dynamicallyImportedIds);
    }
  }
  return starts;
}

/** Whether all of a module's starts lie in these folders. */
function onlyFrom(folders: readonly string[], starts: ReadonlySet<string> | undefined): boolean {
  const inside = (start: string): boolean => folders.some((f) => start.startsWith(`${fileOf(f)}/`));
  return starts !== undefined && [...starts].every(inside);
}

/** The file that a module goes into, by the starts on the page's side and on the worker's side that need it. */
function fileFor(
  page: ReadonlySet<string> | undefined,
  worker: ReadonlySet<string> | undefined,
): string | null {
  const atOnce = page?.has(fileOf(pageStart)) ?? false;
  const analysis = worker?.has(fileOf(workerStart)) ?? false;
  const review = page?.has(fileOf(reviewStart)) ?? false;
  if (page !== undefined && worker !== undefined)
    return atOnce ? 'base' : analysis || review ? 'common' : 'later';
  if (atOnce) return 'page';
  if (analysis) return 'worker';
  // A flight's own analysis and the screens do without these.
  if (onlyFrom(['src/exchange', 'src/app/book'], page)) return 'files';
  if (onlyFrom(['src/attempts', 'src/app/plan', 'src/app/card'], worker)) return 'tasks';
  // What a single start needs stays with it.
  if ((page?.size ?? 0) > 1) return review ? 'charts' : 'screens';
  return (worker?.size ?? 0) > 1 ? 'search' : null;
}

/**
 * Few files, each whole in what it is loaded for: they pack better than many, and nobody waits for what he does not
 * need. What a module imports is needed wherever the module is, so that no two files need each other.
 */
export function pageChunks(): Rolldown.CodeSplittingOptions {
  let ofPage: ReturnType<typeof startsOfModules> | null = null;
  let ofWorker: ReturnType<typeof startsOfModules> | null = null;
  return {
    includeDependenciesRecursively: false,
    groups: [
      {
        debugName: 'what it is loaded for',
        name(id, context) {
          ofPage ??= startsOfModules(pageStart, context);
          ofWorker ??= startsOfModules(workerStart, context);
          return fileFor(ofPage.get(id), ofWorker.get(id));
        },
      },
    ],
  };
}

import { createRequire, Module } from 'node:module';
import { join } from 'node:path';
import { isMainThread } from 'node:worker_threads';
import { cacheFolder } from './cacheFolder.ts';
import { CompiledFile } from './compiledFile.ts';

/*
 * The program's first file. A review of a small log takes less time than compiling the program does, so what was
 * compiled is kept from one run to the next: by Node itself where it can (22.1 on), else by `CompiledFile`.
 * CommonJS, because Node 20 loads it sooner and keeps nothing of what it compiled for modules of the other kind.
 */

const program = join(__dirname, 'program.js');
const folder = cacheFolder();
const { enableCompileCache } = Module as { enableCompileCache?: (folder: string) => unknown };
if (enableCompileCache !== undefined) {
  if (folder !== null) enableCompileCache(folder);
  void start(createRequire(__filename)(program)).catch(fail);
} else {
  const file = new CompiledFile(program, '__PROGRAM_DIGEST__', folder);
  void start(file.load()).then(() => {
    // What a review compiles serves the other commands too.
    if (isMainThread && process.argv[2] === 'review') file.keep();
  }, fail);
}

function start(loaded: unknown): Promise<void> {
  return (loaded as typeof import('./program.ts')).program(__filename);
}

function fail(error: unknown): never {
  throw error;
}

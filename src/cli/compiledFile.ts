import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** Room before the compiled code for what it was made from; whole words, as the engine wants the code to begin at. */
const HEAD_BYTES = 256;

/**
 * A CommonJS file without `import()` that is loaded as `require` does, with what earlier runs compiled of it. The
 * engine itself refuses code that another version of it made; another text is told by its digest.
 */
export class CompiledFile {
  private readonly path: string;
  /** Where compiled code is kept; null keeps none. */
  private readonly kept: string | null;
  private readonly digest: string;
  private script: Script | null = null;

  /**
   * @param digest tells the file's text from any other
   * @param folder the user's own folder for compiled code, or null
   */
  constructor(path: string, digest: string, folder: string | null) {
    this.path = path;
    this.kept = folder === null ? null : join(folder, `node-${process.version}-${process.arch}.bin`);
    this.digest = digest;
  }

  /** What the file exports. */
  load(): unknown {
    const { path } = this;
    const loaded = new Module(path);
    loaded.filename = path;
    const require = createRequire(path);
    // Files that it loads later ask for it again.
    require.cache[path] = loaded;
    const cachedData = this.earlier();
    // The build writes every other character as an escape, and the engine is quickest with such text.
    this.script = new Script(Module.wrap(readFileSync(path, 'latin1')), {
      filename: path,
      ...(cachedData === undefined ? {} : { cachedData }),
    });
    this.script.runInThisContext()(loaded.exports, require, loaded, path, dirname(path));
    loaded.loaded = true;
    return loaded.exports;
  }

  /**
   * Keeps what has been compiled so far, unless the engine took what was there. It is taken again only under the flags
   * that the engine has now. Where nothing can be kept, nothing is.
   */
  keep(): void {
    const { script, kept } = this;
    if (script === null || kept === null || script.cachedDataRejected === false) return;
    const written = `${kept}.${process.pid}`;
    try {
      const code = script.createCachedData();
      writeFileSync(written, Buffer.concat([this.headOf(code), code]), {
        flag: 'wx',
        mode: 0o600,
      });
      renameSync(written, kept);
    } catch {
      rmSync(written, { force: true });
    }
  }

  private earlier(): Buffer | undefined {
    if (this.kept === null) return undefined;
    try {
      const bytes = readFileSync(this.kept);
      const code = bytes.subarray(HEAD_BYTES);
      return this.headOf(code).equals(bytes.subarray(0, HEAD_BYTES)) ? code : undefined;
    } catch {
      return undefined;
    }
  }

  /** The engine takes it on trust that compiled code is whole: its sum tells. */
  private headOf(code: Buffer): Buffer {
    return Buffer.from(`compiled for lossbook ${this.digest}, sum ${crc32(code)}\n`.padEnd(HEAD_BYTES));
  }
}

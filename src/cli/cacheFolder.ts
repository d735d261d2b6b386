import { lstatSync, mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/**
 * The user's own folder for what is compiled, made where it is not there; null where the user wants none
 * (`NODE_DISABLE_COMPILE_CACHE`), or where others could write into it: what lies there is run.
 */
export function cacheFolder(env: NodeJS.ProcessEnv = process.env): string | null {
  if (env.NODE_DISABLE_COMPILE_CACHE) return null;
  const caches = env.XDG_CACHE_HOME ?? (process.platform === 'win32' ? env.LOCALAPPDATA : undefined);
  try {
    const parent = caches !== undefined && isAbsolute(caches) ? caches : join(homedir(), '.cache');
    const folder = join(parent, 'lossbook');
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const at = lstatSync(folder);
    const own = process.getuid === undefined || (at.uid === process.getuid() && (at.mode & 0o077) === 0);
    return at.isDirectory() && own ? folder : null;
  } catch {
    return null;
  }
}

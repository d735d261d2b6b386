import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

const logEnding = /\.(?:csv|tsv|txt|dat|log|json|jsonl|ndjson|oem)(?:\.gz)?$/iu;
/** What lies beside logs: cards, plans, and the list of the flights of a folder. */
const besideLogs = /(?:\.mission\.json|\.plan\.(?:csv|json)|(?:^|[\\/])index\.json)$/iu;

/**
 * The paths given with each folder replaced by the logs in it and in its folders, by name, in the order of their
 * paths. Files that begin with a point, cards and plans are left out.
 */
export async function logFiles(paths: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const path of paths) {
    if (path === '-' || !(await isFolder(path))) found.push(path);
    else found.push(...(await logsIn(path)));
  }
  return found;
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch {
    // What is wrong with it is told when it is read.
    return false;
  }
}

async function logsIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => !entry.name.startsWith('.') && !entry.isDirectory())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .filter((path) => logEnding.test(path) && !besideLogs.test(path))
    .sort((a, b) => (a < b ? -1 : 1));
}

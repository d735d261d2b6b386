import { spawnSync } from 'node:child_process';
import { accessSync, constants, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium-headless-shell', 'chromium', 'google-chrome'] as const;
const packages = ['chromium-headless-shell', 'fonts-dejavu-core'] as const;

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function onPath(path: string): string | undefined {
  const folders = path.split(delimiter).filter((f) => f !== '');
  return names.flatMap((name) => folders.map((f) => join(f, name))).find(canRun);
}

/** True on Debian, Ubuntu and their kin, where apt can be asked. */
function hasApt(): boolean {
  try {
    return /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

function install(): void {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...words: string[]) =>
    spawnSync('apt-get', ['-o', 'DPkg::Lock::Timeout=300', ...words], { env, stdio: 'ignore' });
  if (apt('install', '-y', '--no-install-recommends', ...packages).status === 0) return;
  apt('update');
  apt('install', '-y', '--no-install-recommends', ...packages);
}

/**
 * The browser that the page's tests drive: `CHROMIUM_PATH`, else the first known name on PATH, else one that apt
 * installs where that is possible.
 * @throws Error of one line that says what to install
 */
export function findBrowser(env: NodeJS.ProcessEnv = process.env, mayInstall = true): string {
  const told = env.CHROMIUM_PATH;
  if (told) {
    if (canRun(told)) return told;
    throw new Error(`CHROMIUM_PATH is ${told}, which cannot be run: set it to a Chromium or unset it.`);
  }
  const found = onPath(env.PATH ?? '');
  if (found !== undefined) return found;
  if (mayInstall && hasApt() && process.getuid?.() === 0) {
    install();
    const installed = onPath(env.PATH ?? '');
    if (installed !== undefined) return installed;
  }
  throw new Error(
    `The page's tests need a browser: install ${names.join(', ')} (Debian: apt-get install -y ${packages.join(' ')}) or set CHROMIUM_PATH.`,
  );
}

/**
 * Prints how long a log of 1,000,000 rows takes from its bytes on disk to a Log, against papaparse alone streaming the
 * same file and against reading the file only; each in a process of its own, with its processor time (what counts on a busy machine) and peak memory. ROWS sets the size.
 *   npx vite build --ssr tests/bench/reading.ts --outDir node_modules/.reading && node node_modules/.reading/reading.js
 */
import { spawnSync } from 'node:child_process';
import { closeSync, createReadStream, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { readLogStream } from '../../src/log/readLog.ts';
import { largeLog } from './largeLog.ts';

const ways: Readonly<Record<string, (path: string) => Promise<string>>> = {
  'read the file only': async (path) => {
    let bytes = 0;
    for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) bytes += chunk.length;
    return `${bytes} bytes`;
  },
  'papaparse alone, stream': (path) =>
    new Promise((resolve) => {
      let cells = 0;
      Papa.parse<string[]>(createReadStream(path, { highWaterMark: 1 << 20 }), {
        step: ({ data }) => {
          cells += data.length;
        },
        complete: () => resolve(`${cells} cells`),
      });
    }),
  'readLogStream, bytes to Log': async (path) => {
    let reports = 0;
    const log = await readLogStream(createReadStream(path, { highWaterMark: 1 << 20 }), {
      name: 'large.csv',
      totalBytes: statSync(path).size,
      onProgress: () => reports++,
    });
    return `${log.time.length} rows × ${Object.keys(log.channels).length + 1} channels, ${reports} reports`;
  },
  'readLogStream, cancelled after 0.3 s': async (path) => {
    const signal = AbortSignal.timeout(300);
    const began = performance.now();
    const outcome = await readLogStream(createReadStream(path, { highWaterMark: 1 << 20 }), {
      name: 'large.csv',
      totalBytes: statSync(path).size,
      signal,
    }).catch((error: unknown) => String((error as { code?: unknown }).code));
    return `${typeof outcome === 'string' ? outcome : 'read'} at ${((performance.now() - began) / 1000).toFixed(2)} s`;
  },
};

const [, , way, path] = process.argv;
if (way !== undefined && path !== undefined) {
  const began = performance.now();
  const told = await ways[way]?.(path);
  const seconds = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage();
  console.log(
    JSON.stringify({
      seconds,
      cpu: (user + system) / 1e6,
      peak: process.resourceUsage().maxRSS / 1024,
      told,
    }),
  );
} else {
  const rows = Number(process.env.ROWS ?? 1_000_000);
  const folder = mkdtempSync(join(tmpdir(), 'reading-'));
  const file = join(folder, 'large.csv');
  const handle = openSync(file, 'w');
  for (const text of largeLog(rows)) writeSync(handle, text);
  closeSync(handle);
  console.log(
    `${new Date().toISOString().slice(0, 10)}, Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model}; ` +
      `${rows.toLocaleString('en-US')} rows × 12 columns, ${Math.round(statSync(file).size / 1e6)} MB`,
  );
  for (const name of Object.keys(ways)) {
    const runs = [0, 1, 2].map(() => {
      const { stdout, stderr } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), name, file], {
        encoding: 'utf8',
      });
      try {
        return JSON.parse(stdout) as { seconds: number; cpu: number; peak: number; told: string };
      } catch {
        throw new Error(stderr);
      }
    });
    const best = runs.reduce((a, b) => (b.cpu < a.cpu ? b : a));
    console.log(
      `${name.padEnd(38)} ${best.seconds.toFixed(2).padStart(6)} s, ${best.cpu.toFixed(2).padStart(6)} s of processor  ${best.peak.toFixed(0).padStart(6)} MB  ${best.told}`,
    );
  }
  rmSync(folder, { recursive: true });
}

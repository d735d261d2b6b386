import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseCommand } from '../../src/cli/parseCommand.ts';
import { outcomes } from '../../src/cli/threads.ts';

const log = 'tests/flights/osselby-short.csv';
const card = 'tests/flights/osselby-short.mission.json';
/** Every tenth row of a log at 10 Hz. */
const EVERY = 10;

/** Many small logs in a folder: a reference flight (synthetic) at 1 Hz, its rows each time begun elsewhere. */
export function manyLogs(folder: string, count: number): string[] {
  mkdirSync(folder);
  const [head, ...rows] = readFileSync(log, 'utf8').trimEnd().split('\n');
  return Array.from({ length: count }, (_, k) => {
    const path = join(folder, `flight-${String(k).padStart(5, '0')}.csv`);
    const some = rows.filter((_row, i) => (i + k) % EVERY === 0);
    writeFileSync(path, `${[head, ...some].join('\n')}\n`);
    return path;
  });
}

/** What a folder of logs took with so many threads. */
export interface Throughput {
  /** On the clock, ms. */
  readonly clock: number;
  /** Of all the processor's cores together, ms. */
  readonly processor: number;
  /** The part of both that the second half of the logs took: what begins and warms up is over by then. */
  readonly laterClock: number;
  readonly laterProcessor: number;
}

/** Reviews the logs as `lossbook review --jsonl` does and lets the lines go. */
export async function reviewMany(paths: readonly string[], threads: number): Promise<Throughput> {
  const args = ['review', ...paths, '--mission', card, '--jsonl'];
  const from = { entry: pathToFileURL(resolve('dist/cli/lossbook.js')), args };
  const worked = (): number => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
  const [begun, before] = [performance.now(), worked()];
  let [half, halfWorked] = [begun, before];
  let done = 0;
  for await (const outcome of outcomes(paths, parseCommand(args), 'line', from, threads)) {
    if (outcome.exit !== 0) throw new Error(outcome.notes.join('\n'));
    done++;
    if (done === Math.floor(paths.length / 2)) [half, halfWorked] = [performance.now(), worked()];
  }
  const [ended, after] = [performance.now(), worked()];
  return {
    clock: ended - begun,
    processor: after - before,
    laterClock: ended - half,
    laterProcessor: after - halfWorked,
  };
}

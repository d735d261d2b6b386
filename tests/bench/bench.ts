/**
 * Prints, as Markdown, how fast the command, the engine and their parts are against others on the same machine in
 * the same run. `npm run bench`; sizes by ROWS="6000 60000", parts by PARTS="starts sizes threads page flights", the
 * number of logs that threads share by LOGS=400. Figures of one run may be compared with each other only.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, release, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bestOfOne } from './bestOfOne.ts';
import { denseLog } from './denseLog.ts';
import { flyOften, flyOftenByOdex } from './integrate.ts';
import { type StageTimes, stagesOfReview, tokenise, type WholeTimes, wholeReview } from './oneReview.ts';
import { manyLogs, reviewMany, type Throughput } from './throughput.ts';

const self = fileURLToPath(import.meta.url);
const command = 'dist/cli/lossbook.js';
const sample = 'sample-logs/bobstay-medlar-4.csv';
const card = 'tests/flights/osselby-short.mission.json';
const RUNS = 9;
const TURNS = 3;

interface Job {
  readonly reader: string;
  readonly imports: number;
  readonly read: number;
  readonly compute: number;
  readonly whole: number;
}

interface Flown {
  readonly each_ms: number;
  readonly radius_m: number;
  readonly evaluations: number;
}

const [mode, file, ...more] = process.argv.slice(2);
if (mode === 'review') console.log(JSON.stringify(await wholeReview(file!, card)));
else if (mode === 'stages') console.log(JSON.stringify(await stagesOfReview(file!, card)));
else if (mode === 'tokenise') console.log(JSON.stringify(await tokenise(file!)));
else if (mode === 'many') console.log(JSON.stringify(await reviewMany(more, Number(file))));
else {
  const folder = mkdtempSync(join(tmpdir(), 'lossbook-bench-'));
  const counts = (process.env.ROWS ?? '6000 60000 1000000').split(/\s+/u).map(Number);
  const parts: Readonly<Record<string, () => void | Promise<void>>> = {
    starts: () => starts(folder),
    sizes: () => sizes(folder, counts),
    threads: () => threads(folder, Number(process.env.LOGS ?? 400)),
    page: () => page(folder, Math.max(...counts)),
    flights: () => {
      trajectories();
      bestAscents();
    },
  };
  try {
    machine();
    for (const part of process.env.PARTS?.split(/\s+/u) ?? Object.keys(parts)) await parts[part]?.();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function machine(): void {
  const processor = cpus()[0]?.model.trim() ?? 'unknown processor';
  const memory = Math.round(totalmem() / 2 ** 30);
  console.log(
    `Measured ${new Date().toISOString().slice(0, 10)} on ${cpus().length} cores of ${processor}, ${memory} GB, ${process.platform} ${release()}, Node ${process.version}; ${loadavg()[0]!.toFixed(1)} other programs at work on the mean.`,
  );
}

/** Whole processes, the quickest of several, since others only ever add to it. */
function starts(folder: string): void {
  // The process tells its own processor time as it ends: a parent cannot ask for it.
  const hook = join(folder, 'tell.cjs');
  writeFileSync(
    hook,
    "process.on('exit', () => require('node:fs').writeSync(2, '\\n' + JSON.stringify(process.cpuUsage())));",
  );
  const quickest = (args: readonly string[]): { clock: number; processor: number } => {
    let [clock, processor] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let i = 0; i < RUNS; i++) {
      const start = performance.now();
      const { status, stderr } = spawnSync(process.execPath, ['--require', hook, ...args], {
        stdio: ['ignore', 'ignore', 'pipe'],
        encoding: 'utf8',
      });
      clock = Math.min(clock, performance.now() - start);
      if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}`);
      const { user, system } = JSON.parse(stderr.slice(stderr.lastIndexOf('\n'))) as NodeJS.CpuUsage;
      processor = Math.min(processor, (user + system) / 1000);
    }
    return { clock, processor };
  };
  const bare = quickest(['-e', '']);
  const rows = [
    ['node by itself', bare],
    ['lossbook --version', quickest([command, '--version'])],
    [`lossbook review ${sample}`, quickest([command, 'review', sample])],
    ['the same --json', quickest([command, 'review', sample, '--json'])],
  ] as const;
  table(
    ['whole process', 'ms', 'of node’s own start', 'processor ms', 'of node’s own'],
    rows.map(([name, { clock, processor }]) => [
      name,
      clock.toFixed(0),
      ratio(clock / bare.clock),
      processor.toFixed(0),
      ratio(processor / bare.processor),
    ]),
  );
}

function sizes(folder: string, counts: readonly number[]): void {
  const measured: {
    rows: number;
    review: StageTimes & WholeTimes & { rest: number };
    papa: Pick<WholeTimes, 'whole' | 'byClock'>;
    job: Job | null;
  }[] = [];
  for (const rows of counts) {
    const path = join(folder, `dense-${rows}.csv`);
    writeFileSync(path, denseLog(rows));
    // In turns, each at its quickest: what else the machine does only ever adds to either.
    const turns = Array.from({ length: TURNS }, () => ({
      whole: child<WholeTimes>(process.execPath, [self, 'review', path])!,
      papa: child<{ whole: number; byClock: number }>(process.execPath, [self, 'tokenise', path])!,
    }));
    const byClock = Math.min(...turns.map((turn) => turn.whole.byClock));
    const whole = { ...leastWork(turns.map((turn) => turn.whole)), byClock };
    const papa = {
      whole: leastWork(turns.map((turn) => turn.papa)).whole,
      byClock: Math.min(...turns.map((turn) => turn.papa.byClock)),
    };
    const parts = child<StageTimes>(process.execPath, [self, 'stages', path])!;
    const known = parts.read + parts.reconstruct + parts.ledger + parts.toGo + whole.write;
    // Events, findings, orbit, intervals, strips. Two processes are compared: noise may exceed it.
    const review = { ...parts, ...whole, rest: Math.max(0, whole.whole - known) };
    const job = child<Job>('python3', ['tests/bench/notebook.py', path]);
    measured.push({ rows, review, papa, job });
    console.error(`${rows} rows, ${(statSync(path).size / 1e6).toFixed(1)} MB: done`);
    rmSync(path);
  }
  const stages = ['read', 'reconstruct', 'ledger', 'toGo', 'rest', 'write', 'whole'] as const;
  table(
    [
      'rows × 12, processor ms',
      ...stages.map((s) => (s === 'toGo' ? 'to-go' : s)),
      'papaparse alone',
      'notebook job',
      'whole : papaparse',
      'by the clock',
      'whole : notebook',
      'peak MB',
      'peak : columns',
    ],
    measured.map(({ rows, review, papa, job }) => [
      rows.toLocaleString('en-US'),
      ...stages.map((s) => review[s].toFixed(0)),
      papa.whole.toFixed(0),
      job === null
        ? 'python3 with numpy is not installed'
        : `${(job.whole - job.imports).toFixed(0)} + imports ${job.imports.toFixed(0)}`,
      ratio(review.whole / papa.whole),
      ratio(review.byClock / papa.byClock),
      job === null ? '' : ratio(review.whole / job.whole),
      review.peak_MB.toFixed(0),
      ratio(review.peak_MB / ((rows * 12 * 8) / 2 ** 20)),
    ]),
  );
  const reader = measured.find((m) => m.job !== null)?.job?.reader;
  if (reader !== undefined)
    console.log(
      `\nNotebook job: ${reader} and numpy, one process${reader.startsWith('pandas') ? '' : '; pandas is not installed'}.`,
    );
  const first = measured[0];
  const last = measured.at(-1);
  if (first === undefined || last === undefined || first === last) return;
  const slope = (a: number, b: number): string =>
    (Math.log(b / a) / Math.log(last.rows / first.rows)).toFixed(2);
  console.log(
    `\nGrowth from ${first.rows} to ${last.rows} rows (slope on log axes; 1 is in proportion): ${stages
      .filter((s) => s !== 'rest' && s !== 'write')
      .map((s) => `${s === 'toGo' ? 'to-go' : s} ${slope(first.review[s], last.review[s])}`)
      .join(', ')}; papaparse ${slope(first.papa.whole, last.papa.whole)}.`,
  );
}

/** The run that took the least processor time. */
function leastWork<T extends { readonly whole: number }>(runs: readonly T[]): T {
  return runs.reduce((a, b) => (b.whole < a.whole ? b : a));
}

/** Many small logs on one thread and on all cores. Only processor time tells on a machine that others use. */
function threads(folder: string, count: number): void {
  const paths = manyLogs(join(folder, 'many'), count);
  const all = availableParallelism();
  const run = (threads: number): Throughput =>
    child<Throughput>(process.execPath, [self, 'many', String(threads), ...paths])!;
  const one = run(1);
  const rows = [1, all].map((threads) => {
    const took = threads === 1 ? one : run(threads);
    return [
      String(threads),
      (took.processor / count).toFixed(1),
      (took.laterProcessor / (count / 2)).toFixed(1),
      (took.processor / took.clock).toFixed(2),
      ratio(one.clock / took.clock),
      ratio((threads * one.processor) / took.processor),
      ratio((threads * one.laterProcessor) / took.laterProcessor),
    ];
  });
  table(
    [
      `${count} small logs as JSON lines, threads`,
      'processor ms a log',
      'second half',
      'cores that were free to it',
      'times one thread, by the clock',
      'by processor time',
      'second half',
    ],
    rows,
  );
}

async function page(folder: string, rows: number): Promise<void> {
  const { pageTimes } = await import('./pageTimes.ts');
  const log = join(folder, 'dense.csv');
  writeFileSync(log, denseLog(rows));
  const beside = join(folder, 'dense.mission.json');
  copyFileSync(card, beside);
  const { byClock } = child<WholeTimes>(process.execPath, [self, 'review', log])!;
  const t = await pageTimes([log, beside]);
  const { blank, pan, zoom } = t;
  const ms = (x: number): string => x.toFixed(x < 10 ? 1 : 0);
  table(
    [`the page with ${rows.toLocaleString('en-US')} rows`, 'ms', 'against', 'ms', 'ratio'],
    [
      [
        'first paint',
        ms(t.firstPaint),
        'of an empty page',
        ms(t.blankPaint),
        ratio(t.firstPaint / t.blankPaint),
      ],
      [
        'chosen until reviewed',
        ms(t.imported),
        'the engine in Node',
        ms(byClock),
        ratio(t.imported / byClock),
      ],
      ...(
        [
          ['a frame of a pan', pan],
          ['a frame of a zoom', zoom],
        ] as const
      ).flatMap(([name, moved]) => [
        [name, ms(moved.middle), 'of an empty page', ms(blank.middle), ratio(moved.middle / blank.middle)],
        [
          `${name}, main thread’s own time`,
          ms(moved.worked),
          'one of 60 a second',
          ms(1000 / 60),
          ratio((60 * moved.worked) / 1000),
        ],
      ]),
    ],
  );
}

function trajectories(): void {
  const own = flyOften(2000);
  const odex = flyOftenByOdex(300);
  const other = child<Flown & { version: string }>('python3', ['tests/bench/dop853.py']);
  table(
    ['a trajectory of 300 s at 1e-9', 'ms each', 'evaluations', 'ratio'],
    [
      ['own Dormand–Prince 8(5,3)', own.each_ms.toFixed(3), own.evaluations.toFixed(0), '1'],
      ['odex', odex.each_ms.toFixed(3), odex.evaluations.toFixed(0), ratio(odex.each_ms / own.each_ms)],
      other === null
        ? ['scipy is not installed', '', '', '']
        : [
            `scipy ${other.version} DOP853`,
            other.each_ms.toFixed(3),
            other.evaluations.toFixed(0),
            ratio(other.each_ms / own.each_ms),
          ],
    ],
  );
  if (other !== null)
    console.log(
      `\nThe two end ${Math.abs(own.radius_m - other.radius_m).toExponential(1)} m apart in radius.`,
    );
}

/** The best ascent as a multiple of one flight of it that is taken down. */
function bestAscents(): void {
  const names = ['osselby-nominal', 'osselby-short', 'earth-nominal'];
  table(
    ['best ascent', 'CPU ms', 'flights tried', 'one flight, CPU ms', 'search : one flight'],
    names.map((name) => {
      const { search_ms, trials, flight_ms } = bestOfOne(`tests/flights/${name}.mission.json`);
      return [
        name,
        search_ms.toFixed(0),
        trials.toString(),
        flight_ms.toFixed(2),
        ratio(search_ms / flight_ms),
      ];
    }),
  );
}

/** What a process prints as JSON; null where the program is not there or fails. */
function child<T>(program: string, args: readonly string[]): T | null {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 2 ** 26 });
  if (status === 0) return JSON.parse(stdout) as T | null;
  if (program === process.execPath) throw new Error(stderr);
  return null;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  console.log(
    `\n${[line(head), line(head.map((_, k) => (k === 0 ? '---' : '---:'))), ...rows.map(line)].join('\n')}`,
  );
}

function ratio(value: number): string {
  return value.toPrecision(2);
}

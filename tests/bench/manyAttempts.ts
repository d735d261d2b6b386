/**
 * Measures a comparison of many attempts: the engine's share, the memory, the whole command, and the longest tasks of
 * the page's main thread by that thread's own clock. The attempts are invented: the fifteen runs of the ladder, once a
 * second, with noise drawn anew for each. Needs the built page and command. No test: it asserts nothing.
 *
 *   npx vite build --ssr tests/bench/manyAttempts.ts --outDir node_modules/.bench && node --expose-gc node_modules/.bench/manyAttempts.js 1000
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { attemptOf } from '../../src/attempts/attempt.ts';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { seededRandom } from '../../src/attempts/seededRandom.ts';
import type { Attempt, Comparison } from '../../src/attempts/types.ts';
import { comparisonReport } from '../../src/exchange/report/comparisonReport.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { launch, openPage } from '../browser/openPage.ts';
import { servePage } from '../browser/servePage.ts';
import { longestTasks } from './longestTasks.ts';

const count = Number(process.argv[2] ?? 1000);
const runs = ['tansy', 'medlar', 'teasel'].flatMap((pilot) => [1, 2, 3, 4, 5].map((k) => ({ pilot, k })));

interface Invented {
  readonly id: string;
  readonly log: string;
  readonly card: string;
}

/** Every second row of a run of the ladder with instrument noise of its own. */
function invent(n: number): Invented {
  const { pilot, k } = runs[n % runs.length]!;
  const name = `sample-logs/ladder-${pilot}-${k}`;
  const random = seededRandom(n + 1);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const sigmas = [0, 3, 0.5, 0, 0, 0.2];
  const [head = '', ...rows] = readFileSync(`${name}.csv`, 'utf8').trimEnd().split('\n');
  const shaken = rows
    .filter((_, i) => i % 2 === 0)
    .map((row) =>
      row
        .split(',')
        .map((cell, c) => (sigmas[c] ? (Number(cell) + sigmas[c] * normal()).toFixed(2) : cell))
        .join(','),
    );
  const card = JSON.parse(readFileSync(`${name}.mission.json`, 'utf8'));
  card.flight = { ...card.flight, attempt: 1 + Math.floor(n / 3) };
  return { id: `many-${n}`, log: [head, ...shaken].join('\n'), card: JSON.stringify(card) };
}

async function cpu<T>(what: string, work: () => T | Promise<T>): Promise<T> {
  const start = process.cpuUsage();
  const made = await work();
  const { user, system } = process.cpuUsage(start);
  console.log(`${what}: ${((user + system) / 1e6).toFixed(2)} s of processor time`);
  return made;
}

function heap_MB(): number {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}

const flights = Array.from({ length: count }, (_, n) => invent(n));

const folder = mkdtempSync(join(tmpdir(), 'many-'));
mkdirSync('tests/output', { recursive: true });
try {
  await engine();
  command();
  await page();
} finally {
  rmSync(folder, { recursive: true });
}

async function engine(): Promise<void> {
  const before = heap_MB();
  const attempts: Attempt[] = [];
  await cpu(`${count} reviews`, async () => {
    for (const { id, log, card } of flights) {
      const { review, strips } = await reviewFlight({
        log: { name: `${id}.csv`, bytes: new TextEncoder().encode(log) },
        card: { name: `${id}.mission.json`, text: card },
      });
      attempts.push(attemptOf(review, strips));
    }
  });
  const comparison = await cpu<Comparison>('setting them side by side', () => compareAttempts(attempts));
  console.log(
    `held: ${(heap_MB() - before).toFixed(1)} MB of heap, ${(comparison.bytes / 1e6).toFixed(1)} MB by count`,
  );
  const report = await cpu('the report', () => comparisonReport(comparison));
  console.log(`report: ${(report.length / 1e6).toFixed(2)} MB`);
  // Kept until here, that the heap counted them.
  if (attempts.length !== count) throw new Error('attempts were lost');
}

function command(): void {
  for (const { id, log, card } of flights) {
    writeFileSync(join(folder, `${id}.csv`), log);
    writeFileSync(join(folder, `${id}.mission.json`), card);
  }
  const start = performance.now();
  const { stderr, stdout } = spawnSync(
    process.execPath,
    ['dist/cli/lossbook.js', 'compare', folder, '--json'],
    {
      encoding: 'utf8',
      maxBuffer: 2 ** 30,
    },
  );
  console.log(
    `lossbook compare: ${((performance.now() - start) / 1000).toFixed(0)} s by the clock on the wall`,
  );
  console.log(`${stderr.trim()}\nJSON: ${(stdout.length / 1e6).toFixed(1)} MB`);
}

async function page(): Promise<void> {
  const instead: Record<string, string> = {
    '/samples/index.json': JSON.stringify(
      flights.map(({ id }) => ({
        id,
        title: id,
        log: `${id}.csv`,
        card: `${id}.mission.json`,
        note: 'invented',
        set: 'many',
      })),
    ),
  };
  for (const { id, log, card } of flights) {
    instead[`/samples/${id}.csv`] = log;
    instead[`/samples/${id}.mission.json`] = card;
  }
  const served = await servePage(instead);
  const browser = await launch();
  const { page: tab, complaints } = await openPage(browser, `${served.address}#/attempts`);
  tab.setDefaultTimeout(60_000);
  const measured = async (what: string, act: () => Promise<unknown>): Promise<void> => {
    await browser.startTracing(tab, { categories: ['toplevel'] });
    const start = performance.now();
    await act();
    await tab.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0))));
    const took = (performance.now() - start) / 1000;
    const tasks = longestTasks(await browser.stopTracing()).slice(0, 4);
    console.log(
      `${what}: longest tasks ${tasks.map((t) => t.length_ms.toFixed(0)).join(', ')} ms; ${took.toFixed(1)} s by the wall`,
    );
  };
  await measured('choosing all', () =>
    tab.getByRole('button', { name: `Sample set “many” (${count})` }).click(),
  );
  await measured('comparing', async () => {
    await tab.getByRole('button', { name: `Compare ${count} flights` }).click();
    await tab
      .getByRole('region', { name: 'Best phases flown one after another', exact: true })
      .waitFor({ timeout: 900_000 });
  });
  await measured('setting one apart', () => tab.getByRole('button', { name: 'many-0 (set apart' }).click());
  await measured('turning the table’s page', () => tab.getByRole('button', { name: 'Later' }).click());
  await measured('another column', () => tab.getByLabel('back pressure').check());
  await measured('grouped by verdict', async () => {
    await tab.getByLabel('Grouped by').selectOption('verdict');
    await tab
      .getByRole('rowheader', { name: /^in-orbit/ })
      .first()
      .waitFor();
    await tab.locator('.attempts-screen .working').waitFor({ state: 'detached' });
  });
  await tab.getByLabel('Grouped by').selectOption('pilot');
  await tab.locator('.attempts-screen .working').waitFor({ state: 'detached' });
  await tab.screenshot({ path: 'tests/output/many-attempts.png', fullPage: true });
  console.log(complaints.join('\n'));
  await browser.close();
  await served.stop();
}

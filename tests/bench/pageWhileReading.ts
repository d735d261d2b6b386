/**
 * Measures how long the page does not answer while a log of 1,000,000 rows is read and reviewed: the longest gaps
 * between turns of its event loop, and the longest tasks of its main thread by that thread's own clock, which other
 * programs on the machine do not lengthen. After a minute the work is stopped by its button. Needs the built page. No
 * test: it asserts nothing.
 *
 *   npx vite build --ssr tests/bench/pageWhileReading.ts --outDir node_modules/.bench && node node_modules/.bench/pageWhileReading.js
 */
import { closeSync, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { launch, openPage } from '../browser/openPage.ts';
import { servePage } from '../browser/servePage.ts';
import { longestTasks } from './longestTasks.ts';

const rows = Number(process.argv[2] ?? 1_000_000);
const rate_Hz = 100;

/** A steady climb of twelve columns, about 95 bytes a row. */
function writeLog(path: string): void {
  const file = openSync(path, 'w');
  writeSync(
    file,
    'time_s,altitude_m,speed_m_s,vertical_speed_m_s,pitch_deg,heading_deg,mass_kg,throttle,latitude_deg,longitude_deg,dynamic_pressure_Pa,acceleration_m_s2\n',
  );
  const burn_s = 400;
  for (let from = 0; from < rows; from += 20_000) {
    const lines: string[] = [];
    for (let i = from; i < Math.min(rows, from + 20_000); i++) {
      const t = i / rate_Hz;
      const s = Math.min(t, burn_s);
      const speed = 3 * s + 0.02 * s * s;
      const pitch = 90 * Math.exp(-s / 160);
      const climb = speed * Math.sin((pitch * Math.PI) / 180);
      const altitude = 400 * s * (1 - Math.exp(-s / 60)) + 0.01 * Math.max(0, t - burn_s) * climb;
      lines.push(
        [
          t.toFixed(4),
          altitude.toFixed(2),
          speed.toFixed(3),
          climb.toFixed(3),
          pitch.toFixed(4),
          '90.00',
          (60_000 - 130 * s).toFixed(2),
          t < burn_s ? '1.000' : '0.000',
          '28.5000',
          (-80 + t / 1000).toFixed(5),
          (20_000 * Math.exp(-(((t - 70) / 30) ** 2))).toFixed(2),
          (3 + 0.04 * s).toFixed(4),
        ].join(','),
      );
    }
    writeSync(file, `${lines.join('\n')}\n`);
  }
  closeSync(file);
}

/** Lets a timer turn without pause and writes down the longest gaps between its turns, ms, largest first. */
function watch(): void {
  const gaps: number[] = [];
  let last = performance.now();
  const turn = () => {
    const now = performance.now();
    gaps.push(now - last);
    gaps.sort((a, b) => b - a);
    gaps.length = Math.min(gaps.length, 5);
    last = now;
    setTimeout(turn, 0);
  };
  turn();
  (globalThis as unknown as { gaps: number[] }).gaps = gaps;
}

const folder = mkdtempSync(join(tmpdir(), 'large-'));
const path = join(folder, 'large.csv');
writeLog(path);
console.log(`${rows.toLocaleString('en-US')} rows, ${Math.round(statSync(path).size / 1e6)} MB`);

const served = await servePage();
const browser = await launch();
const { page } = await openPage(browser, `${served.address}#/logbook`);
await page.getByLabel('Choose a flight log').waitFor({ state: 'attached' });
await browser.startTracing(page, { categories: ['toplevel'] });
await page.evaluate(watch);
const worst = (list: readonly number[]) => list.map((x) => x.toFixed(1)).join(' ');
const began = performance.now();
await page.getByLabel('Choose a flight log').setInputFiles(path);
const ended = await page
  .getByRole('region', { name: 'Where the delta-v went' })
  .or(page.getByRole('alert').locator('p'))
  .first()
  .waitFor({ timeout: 60_000 })
  .then(() => true)
  .catch(() => false);
const gaps = await page.evaluate(() => (globalThis as unknown as { gaps: number[] }).gaps);
if (!ended) await page.getByRole('button', { name: 'Stop', exact: true }).click();
const tasks = longestTasks(await browser.stopTracing());
console.log(`${ended ? 'done' : 'stopped'} after ${((performance.now() - began) / 1000).toFixed(1)} s`);
console.log(`longest gaps between turns, by the clock on the wall: ${worst(gaps)} ms`);
console.log(
  `longest tasks of the main thread, by its own clock: ${tasks
    .map((t) => `${t.length_ms.toFixed(1)} ms (${t.beforeEnd_s.toFixed(1)} s before the end)`)
    .join(', ')}`,
);
console.log(await page.getByRole('heading', { level: 1 }).textContent());
await browser.close();
await served.stop();
rmSync(folder, { recursive: true });

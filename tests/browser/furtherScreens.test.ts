import { mkdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atRest, furtherScreens, ladder, openFurther, openPlanScreen, searchBest } from './furtherScreens.ts';
import { bothThemesHold, picturesFit, smallParts } from './looks.ts';
import { launch, openPage } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

let browser: Browser;
let served: ServedPage;

beforeAll(async () => {
  mkdirSync('tests/output', { recursive: true });
  served = await servePage();
  browser = await launch();
}, 300_000);

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** The plan's screen searches and re-flies first. */
const patience_ms = 240_000;

test.each(furtherScreens)(
  '%s from phone to wide desk: nothing scrolls sideways, parts are large enough to press, axe is content; pictures kept',
  async (screen) => {
    const watched = await openFurther(browser, served.address, screen, { touch: true });
    const { page, context, complaints } = watched;
    const resize = (width: number) => page.setViewportSize({ width, height: width < 600 ? 844 : 800 });
    const widths = [1280, 2560, 390];
    for (const width of widths) {
      await resize(width);
      await picturesFit(watched, screen, width);
    }
    for (const summary of await page.locator('main summary').all()) await summary.click();
    for (const width of widths) {
      await resize(width);
      await bothThemesHold(page, width);
      expect(await smallParts(page)).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await context.close();
  },
  patience_ms,
);

test('the best ascent becomes the plan; it is saved, taken off, and chosen again as a file', async () => {
  const watched = await openPlanScreen(browser, served.address);
  const { page, context } = watched;
  await searchBest(watched);
  const heading = page.getByRole('heading', { level: 1 });
  expect(await heading.textContent()).toMatch(/^Dearer than the plan by \d+\sm\/s\.$/);
  const parts = page.getByRole('region', { name: 'What made the difference' });
  expect(await parts.getByRole('row', { name: /^together/ }).count()).toBe(1);
  const events = page.getByRole('region', { name: 'Table of events planned and flown' });
  expect(await events.getByRole('row', { name: /^cutoff upper/ }).count()).toBe(1);
  for (const name of ['Margin on delta-v spent', 'Pitch', 'Throttle', 'Dynamic pressure'])
    expect(
      await page.getByRole('img', { name: new RegExp(`^${name}.*planned from .*flown from `) }).count(),
    ).toBe(1);

  const dearer = await heading.textContent();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the plan' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('bobstay-medlar-4.best.plan.csv');
  const buffer = readFileSync(await file.path());
  await page.getByRole('button', { name: 'Take the plan off' }).click();
  await page.getByRole('heading', { level: 1, name: 'This flight has no plan' }).waitFor();
  await page
    .getByLabel('Choose a plan')
    .setInputFiles({ name: 'again.plan.csv', mimeType: 'text/csv', buffer });
  await page.getByText('plan: again.plan.csv').waitFor();
  expect(await heading.textContent()).toBe(dearer);
  await page
    .getByLabel('Choose another plan')
    .setInputFiles({ name: 'packed.plan.csv.gz', mimeType: 'application/gzip', buffer: gzipSync(buffer) });
  await page.getByText('plan: packed.plan.csv').waitFor();
  expect(await heading.textContent()).toBe(dearer);
  await page
    .getByLabel('Choose another plan')
    .setInputFiles({ name: 'broken.plan.csv.gz', mimeType: 'application/gzip', buffer });
  await page
    .getByRole('alert')
    .getByText(/it is no gzip file/)
    .waitFor();
  await context.close();
});

test('a chart of the plan has its numbers as a table', async () => {
  const { page, context } = await openFurther(browser, served.address, 'plan');
  await page.getByText('Pitch as a table').click();
  const twin = page.getByRole('region', { name: 'Pitch as a table' });
  expect(await twin.getByRole('columnheader').allTextContents()).toEqual(['altitude km', 'planned', 'flown']);
  expect(await twin.getByRole('row').count()).toBeGreaterThan(30);
  await context.close();
});

test('flights are chosen by keys and set side by side; grouping and columns stand in the address', async () => {
  const { page, context, complaints } = await openPage(browser, served.address);
  await page.getByRole('link', { name: 'Attempts' }).click();
  await page.getByRole('button', { name: 'Sample set “ladder” (15)' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Compare 15 flights' }).focus();
  await page.keyboard.press('Enter');
  const table = page.getByRole('region', { name: 'Table of attempts' });
  await table.waitFor();
  expect(await table.getByRole('row', { name: /Bobstay · / }).count()).toBe(ladder.length);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(
    '15 attempts, 3 pilots: 4 on target.',
  );

  await page.getByRole('checkbox', { name: 'back pressure' }).check();
  expect(await table.getByRole('columnheader', { name: 'back pressure' }).count()).toBe(1);
  await page.getByLabel('Grouped by').selectOption('vehicle');
  await table.getByRole('rowheader', { name: /^Bobstay 4 of 15 on target/ }).waitFor();
  await page.getByLabel('Held against').selectOption({ label: 'Bobstay · Medlar, run 1 of 5' });
  await page
    .getByRole('heading', { name: /Where the ways part from Bobstay · Medlar, run 1 of 5/ })
    .waitFor();
  await page.reload();
  await table.getByRole('rowheader', { name: /^Bobstay 4 of 15 on target/ }).waitFor();
  expect(await table.getByRole('columnheader', { name: 'back pressure' }).count()).toBe(1);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a comparison that overtakes another one is not ended by it', async () => {
  const { page, context } = await openPage(browser, served.address);
  // The first comparison gets the logs that it flies again only when the second one is at work.
  await page.addInitScript(() => {
    const atOnce = window.fetch;
    let reviewed = 0;
    let open: () => void = () => undefined;
    const gate = new Promise<void>((resolve) => {
      open = resolve;
    });
    window.fetch = async (...asked) => {
      const file = String(asked[0]);
      if (/ladder-.*csv$/.test(file)) reviewed += 1;
      if (reviewed > 5 && !/bobstay-tansy-1/.test(file)) await gate;
      const response = await atOnce(...asked);
      if (/bobstay-tansy-1.csv$/.test(file)) setTimeout(open, 20);
      return response;
    };
  });
  await page.goto(
    `${served.address}?late#/attempts?flights=${encodeURIComponent(ladder.slice(0, 5).join(','))}`,
  );
  const choice = page.getByLabel('Held against');
  await choice.selectOption({ label: 'Bobstay · Tansy, attempt 1' });
  await page.getByRole('heading', { name: /Where the ways part from Bobstay · Tansy, attempt 1/ }).waitFor();
  await page
    .getByRole('region', { name: 'Best phases flown one after another', exact: true })
    .waitFor({ timeout: patience_ms });
  await page.locator('.attempts-screen .working').waitFor({ state: 'detached' });
  await context.close();
});

test('a flight is set apart in the charts, and the table is saved', async () => {
  const { page, context } = await openFurther(browser, served.address, 'attempts');
  const flight = page.getByRole('button', { name: /^Bobstay · Medlar, run 1 of 5/ });
  await flight.click();
  expect(await flight.getAttribute('aria-pressed')).toBe('true');
  const margins = page.getByRole('region', { name: 'Margins on delta-v spent', exact: true });
  expect(await margins.getByText('Bobstay · Medlar, run 1 of 5', { exact: true }).count()).toBe(1);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save this table as CSV' }).click();
  const rows = readFileSync(await (await download).path(), 'utf8')
    .trimEnd()
    .split('\r\n');
  expect(rows).toHaveLength(ladder.length + 1);
  await context.close();
});

test('the charts of attempts are saved as pictures and as tables, the comparison as a report', async () => {
  const { page, context } = await openFurther(browser, served.address, 'attempts');
  const saved = async (name: string) => {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name, exact: true }).click();
    const file = await download;
    return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
  };
  const svg = await saved('Save Margins on delta-v spent as SVG');
  expect(svg.name).toBe('attempts-margins-on-delta-v-spent.svg');
  expect(svg.bytes.toString()).toContain('15 attempts by pilot: ');
  const png = await saved('Save Ways up as PNG');
  expect(png.bytes.subarray(1, 4).toString()).toBe('PNG');
  const csv = await saved('Save Ways up as CSV');
  const [head = ''] = csv.bytes.toString().split('\n');
  expect(head.match(/altitude_m Bobstay/gu)).toHaveLength(ladder.length);
  const report = await saved('Save report');
  expect(report.name).toBe('attempts.html');
  expect(report.bytes.toString()).toContain('comparison report');
  await context.close();
});

test('attempts are held against the best ascent, and the search for it can be stopped', async () => {
  const { page, context, complaints } = await openFurther(browser, served.address, 'attempts');
  const choice = page.getByLabel('Held against');
  await choice.selectOption({ label: 'the best ascent of this rocket' });
  await page.getByText('searching the best ascent').waitFor();
  await page.getByRole('button', { name: 'Stop comparing' }).click();
  await page.locator('.attempts-screen .working').waitFor({ state: 'detached' });
  // What stood before stands still.
  expect(await page.getByRole('heading', { name: /Where the ways part from Bobstay · Tansy/ }).count()).toBe(
    1,
  );
  await page.getByRole('button', { name: 'Compare 15 flights' }).click();
  await page
    .getByRole('heading', { name: 'Where the ways part from the best ascent (as asked)' })
    .waitFor({ timeout: patience_ms });
  await choice.selectOption({ label: 'Bobstay · Tansy, attempt 1' });
  await page.getByRole('heading', { name: /Where the ways part from Bobstay · Tansy, attempt 1/ }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('attempts are held against the plan of the flight that is shown', async () => {
  const watched = await openPlanScreen(browser, served.address);
  const { page, context, complaints } = watched;
  await searchBest(watched);
  await page.getByRole('link', { name: 'Attempts' }).click();
  await page.getByRole('button', { name: 'Sample set “ladder” (15)' }).click();
  await page.getByRole('button', { name: 'Compare 15 flights' }).click();
  await page.getByRole('region', { name: 'Table of attempts' }).waitFor();
  await atRest(watched);
  await page.getByLabel('Held against').selectOption({ label: 'the plan of Bobstay · Medlar, attempt 4' });
  await page
    .getByRole('heading', { name: /^Where the ways part from .*plan.* \(as asked\)/ })
    .waitFor({ timeout: patience_ms });
  expect(complaints).toEqual([]);
  await context.close();
}, 240_000);

test('the way down tells entry, parachutes, fall and touchdown, and the work in orbit', async () => {
  const { page, context } = await openFurther(browser, served.address, 'way-down');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(
    /^Touchdown at [\d,]+\ss with /,
  );
  const entry = page.getByRole('region', { name: 'Entry', exact: true });
  expect(await entry.getByRole('row', { name: /^peak deceleration at .* 3\.33 g .* derived/ }).count()).toBe(
    1,
  );
  for (const name of ['Deorbit burn', 'Fall predicted and logged', 'Parachutes', 'Landing'])
    expect(await page.getByRole('region', { name, exact: true }).getByRole('row').count()).toBeGreaterThan(2);
  const history = page.getByRole('region', { name: 'Table of orbits' });
  expect(await history.getByRole('rowheader').allTextContents()).toEqual([
    'ascent',
    'raise',
    'circularise',
    'plane change',
    'deorbit',
  ]);
  expect(await page.getByRole('region', { name: 'Findings after the ascent' }).count()).toBe(1);
  await context.close();
});

test('a flight that ends on the way up is told to hold no way down', async () => {
  const watched = await openPage(browser, `${served.address}#/way-down?flight=sample:${shortFlight().id}`);
  await watched.page.getByRole('heading', { level: 1, name: 'The log holds no way down.' }).waitFor();
  await atRest(watched);
  await watched.context.close();
});

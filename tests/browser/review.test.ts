import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, openPage, reviewStands } from './openPage.ts';
import { samplePath, samples, shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

let browser: Browser;
let served: ServedPage;

beforeAll(async () => {
  served = await servePage();
  browser = await launch();
}, 300_000);

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const shortReview = () => `${served.address}#/review?flight=sample:${shortFlight().id}`;

/** Verdict, bar and margin with its phases are drawn and end above the fold of an 800 px window. */
async function wholeAtFirst(page: Page): Promise<void> {
  const parts = [
    page.getByRole('heading', { level: 1 }),
    page.getByRole('region', { name: 'Where the delta-v went' }),
    page.getByRole('img', { name: /^Margin against time: / }),
    page.getByRole('img', { name: /^Phases: / }),
  ];
  for (const part of parts) {
    const box = await part.boundingBox();
    expect(box, 'is drawn').not.toBeNull();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
  }
}

test('a sample flight opens from the list with verdict, bar and margin whole in the first 800 px', async () => {
  const { page, context, complaints, strays } = await openPage(browser, served.address);
  await page.getByRole('button', { name: shortFlight().title }).click();
  await reviewStands(page);

  expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/\d\sm\/s/);
  const bar = page.getByRole('region', { name: 'Where the delta-v went' });
  expect(await bar.getByRole('button', { name: /^gravity [\d,.]+ m\/s, .* %, .*derived/ }).count()).toBe(1);
  await page.getByRole('img', { name: /^Margin against time: .* below zero from \d+ s/ }).waitFor();
  await wholeAtFirst(page);
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

test('every sample flight can be reviewed, its answer whole in the first 800 px', async () => {
  const { page, context, complaints } = await openPage(browser, served.address);
  for (const sample of samples) {
    await page.getByRole('link', { name: 'Logbook' }).click();
    await page.getByRole('button', { name: sample.title, exact: false }).first().click();
    await page.waitForURL(new RegExp(`flight=sample(%3A|:)${sample.id}`));
    await reviewStands(page);
    expect(await page.getByRole('alert').textContent(), sample.id).toBe('');
    await wholeAtFirst(page);
  }
  expect(complaints).toEqual([]);
  await context.close();
});

test('focus on a part of the bar says figure, interval and basis', async () => {
  const { page, context } = await openPage(browser, shortReview());
  await reviewStands(page);
  await page.getByRole('button', { name: /^steering \d/ }).focus();
  const detail = page.locator('.bar-detail');
  await expect
    .poll(() => detail.textContent())
    .toMatch(/^steering [\d,.]+ m\/s, [\d.]+ %, 95 % interval .+, (derived|identified)$/);
  await page.keyboard.press('Escape');
  await expect.poll(() => detail.textContent()).toBe('');
  await context.close();
});

test('the inertial frame changes the ledger and stands in the address', async () => {
  const { page, context } = await openPage(browser, shortReview());
  await reviewStands(page);
  const gravity = page.getByRole('row', { name: /^gravity/ });
  const ground = await gravity.textContent();
  await page.getByRole('radio', { name: 'inertial' }).check();
  expect(await gravity.textContent()).not.toBe(ground);
  expect(page.url()).toContain('frame=inertial');
  await page.reload();
  await reviewStands(page);
  expect(await page.getByRole('radio', { name: 'inertial' }).isChecked()).toBe(true);
  await context.close();
});

test('the time cursor is moved by keys and read in every chart', async () => {
  const { page, context } = await openPage(browser, shortReview());
  await reviewStands(page);
  const cursor = page.getByRole('slider', { name: 'Time cursor of all charts' });
  await cursor.focus();
  await page.keyboard.press('Home');
  for (let i = 0; i < 30; i++) await page.keyboard.press('ArrowRight');
  expect(await cursor.getAttribute('aria-valuetext')).toMatch(/^\d+ s: margin .*to go .*altitude .* km$/);
  expect(await page.locator('.strip-line b').count()).toBeGreaterThanOrEqual(4);
  await page.keyboard.press('+');
  expect(page.url()).toMatch(/from=.*to=/);
  await page.keyboard.press('0');
  expect(page.url()).not.toMatch(/from=/);
  await context.close();
});

test('dragging over a strip frames that stretch in all charts', async () => {
  const { page, context } = await openPage(browser, shortReview());
  await reviewStands(page);
  const strip = page.locator('.strip .u-over').first();
  await strip.scrollIntoViewIfNeeded();
  const box = await strip.boundingBox();
  if (box === null) throw new Error('the first strip is not drawn');
  await page.mouse.move(box.x + 0.2 * box.width, box.y + 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.5 * box.width, box.y + 20, { steps: 5 });
  await page.mouse.up();
  expect(page.url()).toMatch(/from=.*to=/);
  const hero = page.getByRole('slider', { name: 'Time cursor of all charts' });
  const shown =
    Number(await hero.getAttribute('aria-valuemax')) - Number(await hero.getAttribute('aria-valuemin'));
  await page.getByRole('button', { name: 'Whole log' }).click();
  const whole =
    Number(await hero.getAttribute('aria-valuemax')) - Number(await hero.getAttribute('aria-valuemin'));
  expect(shown / whole).toBeCloseTo(0.3, 1);
  await context.close();
});

test('charts have their table twins', async () => {
  const { page, context } = await openPage(browser, shortReview());
  await reviewStands(page);
  await page.getByText('Margin as a table').click();
  const margin = page.getByRole('region', { name: 'Margin as a table' });
  await margin.getByRole('row').nth(10).waitFor();
  expect(await margin.getByRole('columnheader').allTextContents()).toContain('margin m/s');
  await page.getByText('Strips as a table').click();
  await page.getByRole('region', { name: 'Strips as a table' }).getByRole('row').nth(50).waitFor();
  await context.close();
});

test('flights opened on the command line stand first and the first is shown', async () => {
  const flight = shortFlight();
  const own = await servePage({
    '/open.json': JSON.stringify([{ name: 'mine.csv', log: '/open/0', card: '/open/0.card' }]),
    '/open/0': readFileSync(samplePath(flight.log), 'utf8'),
    '/open/0.card': flight.card === null ? '{}' : readFileSync(samplePath(flight.card), 'utf8'),
  });
  const { page, context, complaints } = await openPage(browser, own.address);
  await reviewStands(page);
  expect(page.url()).toMatch(/flight=open(%3A|:)0/);
  await page.getByRole('link', { name: 'Logbook' }).click();
  expect(await page.locator('.flight-title').first().textContent()).toBe('mine.csv');
  expect(complaints).toEqual([]);
  await context.close();
  await own.stop();
});

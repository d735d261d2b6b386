import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { filesOf, give } from './giveFiles.ts';
import { launchLasting, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { servePage } from './servePage.ts';

/** Waits until the page is kept whole for work without its server. */
function keptWhole(page: Page): Promise<unknown> {
  return page.evaluate(() => navigator.serviceWorker.ready);
}

test('after the first load the page works without its server', async () => {
  const served = await servePage();
  const context = await launchLasting();
  const first = await context.newPage();
  await first.goto(served.address);
  await give(first, ...filesOf('bobstay-tansy-1'));
  await reviewStands(first);
  await keptWhole(first);
  await first.close();
  await served.stop();

  const page = await context.newPage();
  await page.goto(`${served.address}#/review?flight=sample:${shortFlight().id}`);
  await reviewStands(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByRole('button', { name: 'bobstay-tansy-1', exact: true }).click();
  await page.waitForURL(/flight=book/);
  await reviewStands(page);
  expect(await page.getByRole('alert').textContent()).toBe('');
  await context.close();
});

test('under lossbook open nothing is kept for work without it, and what another server left goes', async () => {
  const asHost = await servePage();
  const context = await launchLasting();
  const first = await context.newPage();
  await first.goto(asHost.address);
  await keptWhole(first);
  await first.close();
  const port = Number(new URL(asHost.address).port);
  await asHost.stop();

  const opened = await servePage({ '/open.json': '[]' }, port);
  const page = await context.newPage();
  const registrations = () =>
    page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
  await page.goto(opened.address);
  await expect.poll(registrations).toBe(0);
  await page.reload();
  await page.getByRole('heading', { name: /^Sample flights/ }).waitFor();
  expect(await registrations()).toBe(0);
  await context.close();
  await opened.stop();
});

test('a newer page waits until the reader wants it', async () => {
  const old = await servePage();
  const context = await launchLasting();
  const page = await context.newPage();
  await page.goto(old.address);
  await keptWhole(page);
  await page.reload();
  const port = Number(new URL(old.address).port);
  const script = await (await fetch(`${old.address}offline.js`)).text();
  await old.stop();

  const newer = await servePage({ '/offline.js': script.replace(/[0-9a-f]{12}/, 'fedcba987654') }, port);
  await page.reload();
  await page.getByText('A newer lossbook is here.').waitFor();
  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Use it now' }).click()]);
  await page.getByRole('heading', { name: /^Sample flights/ }).waitFor();
  expect(await page.evaluate(() => caches.keys())).toEqual(['lossbook-fedcba987654']);
  await context.close();
  await newer.stop();
});

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { filesOf, give } from './giveFiles.ts';
import { launchLasting, reviewStands } from './openPage.ts';
import { samples, shortFlight } from './sampleList.ts';
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

/** Sample flights' logs that are kept, by name. */
function keptSamples(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const [name = ''] = await caches.keys();
    const requests = await (await caches.open(name)).keys();
    const names = requests.map(({ url }) => url.replace(/^.*\//u, ''));
    return names.filter((n) => /\.(csv|json)$/u.test(n) && !/\.mission\.|^index\.json$/u.test(n)).sort();
  });
}

test('of the sample flights the first is kept, and those that were opened; another says why it does not open', async () => {
  const served = await servePage();
  const context = await launchLasting();
  const first = await context.newPage();
  await first.goto(served.address);
  await keptWhole(first);
  expect(await keptSamples(first)).toEqual([samples[0]?.log]);
  await first.reload();
  await first.goto(`${served.address}#/review?flight=sample:thimble-teasel-1`);
  await reviewStands(first);
  expect(await keptSamples(first)).toEqual([samples[0]?.log, 'thimble-teasel-1.csv'].sort());
  await first.close();
  await served.stop();

  const page = await context.newPage();
  await page.goto(`${served.address}#/review?flight=sample:thimble-teasel-1`);
  await reviewStands(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByRole('button', { name: /Fairlead · Tansy, attempt 1/ }).click();
  await page
    .getByRole('alert')
    .getByText(/its server does not answer/)
    .waitFor();
  await page.getByRole('button', { name: /Bobstay · Medlar, attempt 4/ }).click();
  await page.waitForURL(/bobstay-medlar-4/);
  await reviewStands(page);
  await context.close();
});

test('what a page keeps without being asked is the page and little more', async () => {
  const served = await servePage();
  const context = await launchLasting();
  const page = await context.newPage();
  await page.goto(served.address);
  await keptWhole(page);
  const bytes = await page.evaluate(async () => {
    const [name = ''] = await caches.keys();
    const cache = await caches.open(name);
    const sizes = (await cache.keys()).map(async (r) => (await (await cache.match(r))?.blob())?.size ?? 0);
    return (await Promise.all(sizes)).reduce((a, b) => a + b, 0);
  });
  // All samples together would be 1.5 MB more.
  expect(bytes).toBeLessThan(1_500_000);
  await context.close();
  await served.stop();
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
  const other = await context.newPage();
  await other.goto(old.address);
  const useIt = async (tab: Page) => {
    await tab.getByText('A newer lossbook is here.').waitFor();
    await Promise.all([tab.waitForEvent('load'), tab.getByRole('button', { name: 'Use it now' }).click()]);
    await tab.getByRole('heading', { name: /^Sample flights/ }).waitFor();
  };
  await useIt(page);
  // A tab that was open meanwhile goes over too.
  await useIt(other);
  expect(await page.evaluate(() => caches.keys())).toEqual(['lossbook-fedcba987654']);
  await context.close();
  await newer.stop();
});

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { card, dropOn, give, log } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
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

test('a picked log is reviewed with the card of the same name', async () => {
  const { page, context, complaints, strays } = await openPage(browser, served.address);
  await give(page, log('evening.csv'), card('evening.mission.json'));
  await reviewStands(page);
  await page.getByText('How the log was understood').click();
  expect(await page.getByText(/^evening\.csv: /).textContent()).toContain(
    'mission card evening.mission.json',
  );
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByRole('button', { name: 'evening', exact: true }).waitFor();
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

test('a log dropped on any screen is reviewed; a card dropped alone goes to the flight shown', async () => {
  const { page, context } = await openPage(browser, served.address);
  await dropOn(page, log('morning.csv'));
  await reviewStands(page);
  await page.getByText('How the log was understood').click();
  expect(await page.getByText(/^morning\.csv: /).textContent()).toContain('no mission card');
  await dropOn(page, card('other.mission.json'));
  await page.getByText(/mission card other\.mission\.json/).waitFor();
  await context.close();
});

test('a broken log says what, where and what to do, and the review that stood is still there', async () => {
  const { page, context } = await openPage(browser, served.address);
  await dropOn(page, log('good.csv'), card('good.mission.json'));
  await reviewStands(page);
  const verdict = await page.getByRole('heading', { level: 1 }).textContent();
  await dropOn(page, { name: 'broken.csv', text: 'colour,taste\nred,sweet\nblue,sour\n' });
  const alert = page.getByRole('alert');
  await alert.getByText('broken.csv').waitFor();
  const text = (await alert.textContent()) ?? '';
  expect(text).toContain('The review of good is still here.');
  expect(text).not.toMatch(/--map|undefined|Error:|\bat .*\.js/);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(verdict);
  await alert.getByRole('button', { name: /Close/ }).click();
  expect(await alert.textContent()).toBe('');
  await context.close();
});

test('an empty file and a card without a log each get their own message', async () => {
  const { page, context } = await openPage(browser, served.address);
  await give(page, { name: 'empty.csv', text: '' });
  await page.getByRole('alert').getByText('The file holds nothing.').waitFor();
  await give(page, card('alone.mission.json'));
  await page
    .getByRole('alert')
    .getByText(/give it together with its log/i)
    .waitFor();
  await context.close();
});

test('a broken card names its place', async () => {
  const { page, context } = await openPage(browser, served.address);
  await give(page, log('a.csv'), { name: 'a.mission.json', text: '{ "vehicel": {} }' });
  await page
    .getByRole('alert')
    .getByText(/unknown field “vehicel”.*vehicle/)
    .waitFor();
  await context.close();
});

test('text of log and card is never markup', async () => {
  const { page, context, complaints } = await openPage(browser, served.address);
  const mark = '<img src=x onerror=alert(1)>';
  const named = JSON.parse(card('x').text) as { mission?: string; flight?: { pilot?: string } };
  named.mission = mark;
  named.flight = { pilot: `<b>${mark}</b>` };
  const rows = log('x').text.split('\n');
  const marked = [
    `${rows[0]},${mark}`,
    ...rows
      .slice(1)
      .filter((r) => r !== '')
      .map((r) => `${r},1`),
  ].join('\n');
  await give(
    page,
    { name: `${mark}.csv`, text: marked },
    { name: 'x.mission.json', text: JSON.stringify(named) },
  );
  await reviewStands(page);
  expect(await page.locator('.context').textContent()).toContain(mark);
  expect(await page.locator('#page img, #page b img').count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});

test('the page refuses requests to other hosts by its own policy', async () => {
  const { page, context } = await openPage(browser, served.address);
  const outcome = await page.evaluate(() =>
    fetch('http://127.0.0.2:9/').then(
      () => 'sent',
      () => 'refused',
    ),
  );
  expect(outcome).toBe('refused');
  const policy = page.locator('meta[http-equiv="Content-Security-Policy"]');
  expect(await policy.getAttribute('content')).toMatch(/default-src 'none'.*connect-src 'self'/);
  await context.close();
});

import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, openPage, reviewStands } from './openPage.ts';
import { samplePath, shortFlight } from './sampleList.ts';
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

interface Given {
  readonly name: string;
  readonly text: string;
}

const log = (name: string): Given => ({ name, text: readFileSync(samplePath(shortFlight().log), 'utf8') });
const card = (name: string): Given => ({
  name,
  text: readFileSync(samplePath(shortFlight().card ?? ''), 'utf8'),
});

async function give(page: Page, ...files: readonly Given[]): Promise<void> {
  await page
    .getByLabel('Choose a flight log')
    .setInputFiles(
      files.map(({ name, text }) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })),
    );
}

async function dropOn(page: Page, ...files: readonly Given[]): Promise<void> {
  const data = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const { name, text } of list) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.dispatchEvent('main', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('main', 'drop', { dataTransfer: data });
}

test('a picked log is reviewed with the card of the same name', async () => {
  const { page, context, complaints, strays } = await openPage(browser, served.address);
  await give(page, log('evening.csv'), card('evening.mission.json'));
  await reviewStands(page);
  await page.getByText('How the log was understood').click();
  expect(await page.getByText(/^evening\.csv: /).textContent()).toContain(
    'mission card evening.mission.json',
  );
  await page.getByRole('link', { name: 'Flights' }).click();
  await page.getByRole('button', { name: /^evening\.csv/ }).waitFor();
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
  expect(text).toContain('The review of good.csv is still here.');
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

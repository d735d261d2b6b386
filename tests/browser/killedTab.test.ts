import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { dropOn, filesOf, give } from './giveFiles.ts';
import { launchLasting, reviewStands } from './openPage.ts';
import { samples } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

let context: BrowserContext;
let served: ServedPage;

beforeAll(async () => {
  served = await servePage();
  context = await launchLasting();
}, 300_000);

afterAll(async () => {
  await context?.close();
  await served?.stop();
});

async function openBook(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${served.address}#/logbook`);
  await page.getByLabel('Choose a flight log').waitFor({ state: 'attached' });
  return page;
}

/** Flights of the import that is cut off, after two that are in the book before. */
const [one = '', two = '', ...others] = samples.slice(0, 10).map((s) => s.id);
const many = others.flatMap(filesOf);

const titles = (page: Page) => page.locator('.lines .flight-title').allTextContents();

test('a tab killed in the middle of an import loses nothing of the book, and every flight in it is whole', async () => {
  const page = await openBook();
  await give(page, ...filesOf(one), ...filesOf(two));
  await page.getByText('2 flights came into the logbook').waitFor();
  const before = await titles(page);

  const dying = await openBook();
  await dropOn(dying, ...many);
  await dying.getByText(/^Flight [3-9] of/).waitFor();
  const session = await context.newCDPSession(dying);
  // The whole process dies at once, in the middle of a flight: no handler of the page runs any more.
  const crashed = dying.waitForEvent('crash');
  void session.send('Page.crash').catch(() => {});
  await crashed;
  await dying.close();

  await page.reload();
  await expect.poll(() => titles(page)).toEqual(expect.arrayContaining(before));
  const after = await titles(page);
  expect(after.length).toBeGreaterThanOrEqual(before.length + 2);
  expect(after.length).toBeLessThan(2 + others.length);
  for (const title of after) {
    await page.getByRole('link', { name: 'Logbook' }).click();
    await page.getByRole('button', { name: title, exact: true }).click();
    await page.waitForURL(/flight=book/);
    await reviewStands(page);
    expect(await page.getByRole('alert').textContent(), title).toBe('');
  }

  // What did not come in is given again; what did is known.
  await page.getByRole('link', { name: 'Logbook' }).click();
  await dropOn(page, ...many);
  await page.getByText(/came into the logbook, \d+ (was|were) there already/).waitFor({ timeout: 80_000 });
  await expect.poll(() => titles(page)).toHaveLength(2 + others.length);
});

test('an import can be stopped between two flights', async () => {
  const other = await context.newPage();
  await other.goto(`${served.address}#/logbook`);
  await expect.poll(() => titles(other)).toHaveLength(2 + others.length);
  const [first] = filesOf('bobstay-tansy-1');
  const copies = Array.from({ length: 12 }, (_, i) => ({ name: `copy-${i}.csv`, text: first?.text ?? '' }));
  await dropOn(other, ...copies);
  await other.getByText(/^Flight [2-9] of 12/).waitFor();
  await other.getByRole('button', { name: 'Stop', exact: true }).click();
  await other.getByText(/^Flight \d+ of 12/).waitFor({ state: 'detached' });
  const stopped = (await titles(other)).length;
  expect(stopped).toBeGreaterThan(2 + others.length);
  expect(stopped).toBeLessThan(2 + others.length + 12);
  await other.close();
});

test('a plan that was not applied outlives the tab, with its name', async () => {
  const hash = `#/plan-editor?flight=sample:${one}`;
  const name = (page: Page) => page.getByLabel('Name', { exact: true });
  const dying = await context.newPage();
  await dying.goto(`${served.address}${hash}`);
  await dying.getByRole('heading', { level: 1, name: /plan (of|for)/i }).waitFor();
  await dying.getByLabel('time, row 1').waitFor();
  await dying.getByRole('button', { name: 'A gravity turn (invented)' }).click();
  await dying.getByText('The plan is right.').waitFor();
  await name(dying).fill('dusk');
  const session = await context.newCDPSession(dying);
  const crashed = dying.waitForEvent('crash');
  void session.send('Page.crash').catch(() => {});
  await crashed;
  await dying.close();

  const page = await context.newPage();
  await page.goto(`${served.address}${hash}`);
  await page.getByText('Edits that were left here unsaved are back.').waitFor();
  expect(await name(page).inputValue()).toBe('dusk');
  expect(await page.getByRole('textbox', { name: 'time, row 2', exact: true }).inputValue()).toBe('15');
  await page.getByRole('button', { name: 'Take the changes back' }).click();
  await page.close();
});

test('edits of a mission card outlive the tab: they come back with their flight, say so, and can be discarded', async () => {
  const dying = await openBook();
  await expect.poll(async () => (await titles(dying)).length).toBeGreaterThan(0);
  const [title = ''] = await titles(dying);
  await dying.getByRole('button', { name: title, exact: true }).click();
  await reviewStands(dying);
  const flight = new URL(dying.url()).hash.replace('#/review', '#/card');
  await dying.getByRole('link', { name: 'Mission card' }).click();
  const payload = (page: Page) =>
    page.getByRole('form', { name: 'Mission card as a form' }).getByLabel('Payload');
  const given = await payload(dying).inputValue();
  await payload(dying).fill('4321');
  const session = await context.newCDPSession(dying);
  const crashed = dying.waitForEvent('crash');
  void session.send('Page.crash').catch(() => {});
  await crashed;
  await dying.close();

  const page = await context.newPage();
  await page.goto(`${served.address}${flight}`);
  await page.getByText('Edits that were left here unapplied are back.').waitFor();
  expect(await payload(page).inputValue()).toBe('4321');
  // Another flight's card has none of it.
  await page.goto(`${served.address}#/card?flight=sample:${one}`);
  await page.getByRole('heading', { name: /mission card (of|for)/i, level: 1 }).waitFor();
  await expect.poll(() => payload(page).inputValue()).not.toBe('4321');
  await page.goto(`${served.address}${flight}`);
  await page.getByRole('button', { name: 'Discard them' }).click();
  expect(await payload(page).inputValue()).toBe(given);
  await page.reload();
  await page.getByRole('heading', { name: /mission card (of|for)/i, level: 1 }).waitFor();
  await expect.poll(() => payload(page).inputValue()).toBe(given);
  expect(await page.getByRole('button', { name: 'Discard them' }).count()).toBe(0);
  await page.close();
});

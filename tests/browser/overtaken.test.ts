import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { card, dropOn, filesOf, give, log } from './giveFiles.ts';
import { goTo, hold, isHeld, letGo, openHolding, titles, workersOf } from './holdTasks.ts';
import { launch, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

/** Work that another overtakes, or that is stopped, changes nothing any more; what comes last is what stands. */
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

const short = `sample:${shortFlight().id}`;
const other = 'sample:bobstay-tansy-1';

/** Waits until the review of a flight stands whole. */
async function reviewOf(page: Page, words: string): Promise<void> {
  await page.locator('.context', { hasText: words }).waitFor();
  await reviewStands(page);
}

/** Longer than what was let go needs, where nothing is to be seen of it. */
const settled = (page: Page) => page.waitForTimeout(700);

test('a file that was left aside is told of beside the flight that came in', async () => {
  const { page, context } = await openHolding(browser, served.address);
  await dropOn(page, log('good.csv'), { name: 'notes.txt', text: 'hello\n' });
  await reviewStands(page);
  await page
    .getByRole('alert')
    .getByText(/One file was left aside:/)
    .waitFor();
  await context.close();
});

test('files that could not be read are told of though a flight was opened meanwhile', async () => {
  const { page, context } = await openHolding(browser, served.address, ['review']);
  await dropOn(page, log('good.csv'), { name: 'notes.txt', text: 'hello\n' });
  await isHeld(page, 'review');
  await hold(page);
  await goTo(page, `#/review?flight=${short}`);
  await reviewOf(page, 'attempt 4');
  await letGo(page);
  await page
    .getByRole('alert')
    .getByText(/One file was left aside:/)
    .waitFor();
  expect(page.url()).toContain(short);
  await context.close();
});

test('a flight that came in does not take the screen from one that was opened meanwhile', async () => {
  const { page, context } = await openHolding(browser, served.address, ['logs.get']);
  await dropOn(page, ...filesOf('thimble-teasel-1'));
  await isHeld(page, 'logs.get');
  await goTo(page, `#/review?flight=${short}`);
  await reviewOf(page, 'attempt 4');
  await letGo(page);
  await settled(page);
  await reviewOf(page, 'attempt 4');
  expect(page.url()).toContain(short);
  await context.close();
});

test('taking a file in that was stopped while it was compared with the book keeps nothing', async () => {
  const { page, context } = await openHolding(browser, served.address);
  const { text } = log('x');
  await give(page, { name: 'twin.csv', text });
  await reviewStands(page);
  await hold(page, 'bytes');
  await dropOn(page, {
    name: 'twin.csv',
    text: text.replace(/\d(?=\D*$)/, (d) => String((Number(d) + 1) % 10)),
  });
  await isHeld(page, 'bytes');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await letGo(page);
  await settled(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await expect.poll(() => titles(page)).toEqual(['twin']);
  await context.close();
});

test('bringing a logbook back does not take the reader from a flight opened meanwhile', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/logbook`);
  await give(page, ...['bobstay-tansy-1', 'thimble-teasel-1'].flatMap(filesOf));
  await page.getByText('2 flights came into the logbook').waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export the logbook' }).click(),
  ]);
  const path = await download.path();
  const fresh = await openHolding(browser, `${served.address}#/logbook`, ['logs.put']);
  await fresh.page.getByLabel('Choose a flight log').setInputFiles(path);
  await isHeld(fresh.page, 'logs.put');
  await goTo(fresh.page, `#/review?flight=${short}`);
  await reviewOf(fresh.page, 'attempt 4');
  await letGo(fresh.page);
  await settled(fresh.page);
  await reviewOf(fresh.page, 'attempt 4');
  await fresh.context.close();
  await context.close();
});

test('back while the flight that is shown is reviewed again opens the flight of the address', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${other}`);
  await reviewOf(page, 'Tansy');
  await goTo(page, `#/review?flight=${short}`);
  await reviewOf(page, 'attempt 4');
  await hold(page, 'review');
  await dropOn(page, card('other.mission.json'));
  await isHeld(page, 'review');
  await page.goBack();
  await letGo(page);
  await reviewOf(page, 'Tansy');
  expect(page.url()).toContain(other);
  await context.close();
});

test('forward again while the way back is still being read stays with the flight of the address', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${other}`);
  await reviewOf(page, 'Tansy');
  await goTo(page, `#/review?flight=${short}`);
  await reviewOf(page, 'attempt 4');
  await hold(page, 'review');
  await page.goBack();
  await isHeld(page, 'review');
  await page.goForward();
  await letGo(page);
  await settled(page);
  await reviewOf(page, 'attempt 4');
  expect(page.url()).toContain(short);
  await page.locator('.announcements .working').waitFor({ state: 'detached' });
  await context.close();
});

test('a book that opens late does not lead back to an address that was left', async () => {
  const hash = `#/review?flight=book:${'0'.repeat(32)}`;
  const { page, context } = await openHolding(browser, `${served.address}${hash}`, ['book.open']);
  await page.getByRole('button', { name: /Medlar, attempt 4/ }).click();
  await reviewOf(page, 'attempt 4');
  await letGo(page);
  await settled(page);
  await reviewOf(page, 'attempt 4');
  expect(await page.getByText('That flight is not in the logbook').count()).toBe(0);
  await context.close();
});

test('a flight behind the curves that was taken off again before it was fetched is not worked out', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${short}`);
  await reviewOf(page, 'attempt 4');
  await page.getByText('choose one to frame it in every chart').waitFor();
  let arrive: () => void = () => {};
  await page.route(/bobstay-tansy-1\.csv/, async (route) => {
    await new Promise<void>((go) => {
      arrive = go;
    });
    await route.continue();
  });
  const before = await workersOf(page);
  const choice = page.getByLabel('Behind the curves');
  const asked = page.waitForRequest(/bobstay-tansy-1\.csv/);
  await choice.selectOption(other);
  await asked;
  await choice.selectOption({ label: 'no other flight' });
  const came = page.waitForResponse(/bobstay-tansy-1\.csv/);
  arrive();
  await (await came).finished();
  await settled(page);
  expect(await workersOf(page)).toBe(before);
  await context.close();
});

test('causes whose search other work ended are sought again', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${short}`, [
    'causes',
  ]);
  await reviewOf(page, 'attempt 4');
  await isHeld(page, 'causes');
  await hold(page);
  await dropOn(page, { name: 'broken.csv', text: 'colour,taste\nred,sweet\nblue,sour\n' });
  await page.getByRole('alert').getByText('broken.csv').waitFor();
  const findings = page.getByRole('region', { name: 'Findings' });
  await findings.getByText('choose one to frame it in every chart').waitFor();
  await expect.poll(() => findings.getByRole('listitem').count()).toBeGreaterThan(1);
  await page.getByRole('alert').getByText('broken.csv').waitFor();
  await context.close();
});

test('a choice made while another is being read does not undo it', async () => {
  const { page, context } = await openHolding(browser, served.address);
  await give(page, log('bare.csv'));
  await reviewStands(page);
  await hold(page, 'review');
  await page.getByRole('combobox', { name: 'World' }).selectOption('mars');
  await isHeld(page, 'review');
  await hold(page);
  const target = page.getByRole('textbox', { name: /^Target orbit/ });
  await target.fill('100 mi');
  await target.press('Enter');
  await page
    .getByText(/orbit 16[01](\.9)? × 16[01](\.9)? km/)
    .first()
    .waitFor();
  await expect.poll(() => page.locator('.context').textContent()).toContain('Mars');
  await expect.poll(() => page.getByRole('combobox', { name: 'World' }).inputValue()).toBe('mars');
  await context.close();
});

test('a column said while another is being read does not undo it', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/columns?flight=${other}`);
  await page.getByRole('heading', { name: '6 of 6 columns are used.' }).waitFor();
  const taken = (name: RegExp) => page.getByRole('combobox', { name });
  await hold(page, 'review');
  await taken(/^Channel of .*pitch/i).selectOption('none');
  await isHeld(page, 'review');
  await hold(page);
  await taken(/^Channel of .*throttle/i).selectOption('none');
  await page.getByRole('heading', { name: '4 of 6 columns are used.' }).waitFor();
  await context.close();
});

test('a plan that was found is told of when the flight has it, and not when that was stopped', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/plan?flight=${short}`);
  await page.getByRole('heading', { level: 1, name: 'This flight has no plan' }).waitFor();
  await hold(page, 'review');
  await page.getByRole('button', { name: 'Search the best ascent' }).click();
  await isHeld(page, 'review');
  expect(await page.getByText('is now the flight’s plan').count()).toBe(0);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await letGo(page);
  await settled(page);
  expect(await page.getByText('is now the flight’s plan').count()).toBe(0);
  await page.getByRole('button', { name: 'Search the best ascent' }).click();
  await page.getByText('is now the flight’s plan').waitFor();
  await page.getByRole('region', { name: 'What made the difference' }).waitFor();
  await context.close();
}, 120_000);

test('a card that the browser can no longer read is told of', async () => {
  const { page, context, complaints } = await openHolding(
    browser,
    `${served.address}#/review?flight=${short}`,
  );
  await reviewOf(page, 'attempt 4');
  await page.evaluate(() => {
    Blob.prototype.text = () => Promise.reject(new DOMException('gone', 'NotReadableError'));
  });
  await dropOn(page, card('gone.mission.json'));
  await page
    .getByRole('alert')
    .getByText(/could not read it/)
    .waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

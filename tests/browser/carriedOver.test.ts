import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { dropOn, filesOf, give, log } from './giveFiles.ts';
import { goTo, hold, isHeld, letGo, openHolding, titles } from './holdTasks.ts';
import { launch, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

/** What belongs to one flight, or was written meanwhile, is neither carried over to another nor lost. */
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

test('edits of a card made while its earlier state is still worked on stay', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/card?flight=${short}`, ['causes']);
  const payload = page.getByRole('form', { name: 'Mission card as a form' }).getByLabel('Payload');
  await isHeld(page, 'causes');
  await payload.fill('4321');
  await page.getByRole('button', { name: 'Review the flight with it' }).click();
  await expect
    .poll(() => page.getByRole('button', { name: 'Review the flight with it' }).isDisabled())
    .toBe(true);
  await page.locator('.announcements .working').waitFor({ state: 'detached' });
  await payload.fill('4400');
  await letGo(page);
  await page.getByRole('link', { name: 'Review' }).click();
  await page.getByText('choose one to frame it in every chart').waitFor();
  await page.getByRole('link', { name: 'Mission card' }).click();
  await payload.waitFor();
  expect((await payload.inputValue()).replace(',', '')).toBe('4400');
  await context.close();
});

test('a plan worked out for one flight never stands in the editor of another', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/plan-editor?flight=${other}`);
  await page.getByRole('heading', { level: 1, name: /A plan for.*Tansy/ }).waitFor();
  await hold(page, 'planOfFlight');
  await page.getByRole('button', { name: 'This flight as flown' }).click();
  await isHeld(page, 'planOfFlight');
  await goTo(page, `#/plan-editor?flight=${short}`);
  await page.getByRole('heading', { level: 1, name: /A plan for.*Medlar/ }).waitFor();
  await letGo(page);
  await page.locator('.start-from .working').waitFor({ state: 'detached' });
  await page.getByText('Nothing stands in the rows yet.').waitFor();
  await context.close();
});

test('a deleted flight that came back from an exported logbook outlives the next deletion', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/logbook`);
  await give(page, ...['bobstay-tansy-1', 'thimble-teasel-1'].flatMap(filesOf));
  await page.getByText('2 flights came into the logbook').waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export the logbook' }).click(),
  ]);
  const remove = async (title: string) => {
    await page.getByRole('button', { name: `Delete ${title}` }).click();
    await page.getByText(`${title} is deleted.`).waitFor();
  };
  await remove('bobstay-tansy-1');
  await page.getByLabel('Choose a flight log').setInputFiles(await download.path());
  await page.getByText(/1 flight came into the logbook/).waitFor();
  await remove('thimble-teasel-1');
  await page.reload();
  await expect.poll(() => titles(page)).toEqual(['bobstay-tansy-1']);
  await context.close();
});

test('a deletion that another tab took back is not made final in this one', async () => {
  const { page: first, context } = await openHolding(browser, `${served.address}#/logbook`);
  await give(first, ...['bobstay-tansy-1', 'thimble-teasel-1'].flatMap(filesOf));
  await first.getByText('2 flights came into the logbook').waitFor();
  await first.getByRole('button', { name: 'Delete bobstay-tansy-1' }).click();
  await expect.poll(() => titles(first)).toHaveLength(1);
  const second = await context.newPage();
  await second.goto(`${served.address}#/logbook`);
  await second.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => titles(first)).toHaveLength(2);
  await first.getByRole('button', { name: 'Delete thimble-teasel-1' }).click();
  await first.getByText('thimble-teasel-1 is deleted.').waitFor();
  await first.reload();
  await expect.poll(() => titles(first)).toEqual(['bobstay-tansy-1']);
  await context.close();
});

test('the columns of a flight are shown though a log that could not be read was given before', async () => {
  const { page, context } = await openHolding(browser, served.address);
  const renamed = log('x').text.replace(/^.*\n/, 'one,two,three,four,five,six\n');
  await give(page, { name: 'odd.csv', text: renamed });
  await page.getByRole('alert').getByRole('button', { name: 'Say which columns they are' }).waitFor();
  await goTo(page, `#/review?flight=${short}`);
  await reviewStands(page);
  await page.getByRole('link', { name: 'Columns' }).click();
  await page.getByRole('heading', { level: 1, name: /columns are used/ }).waitFor();
  await context.close();
});

test('the guide rests while another flight than its own is shown', async () => {
  const { page, context } = await openHolding(browser, served.address);
  await page.getByRole('button', { name: 'Read a first review with a guide' }).click();
  const guide = page.getByRole('complementary', { name: 'Guided first review' });
  await guide.getByText('1 of 6').waitFor();
  await goTo(page, `#/review?flight=${other}`);
  await page.getByRole('heading', { level: 1, name: /^In / }).waitFor();
  await reviewStands(page);
  await guide.waitFor({ state: 'detached' });
  await goTo(page, `#/review?flight=${short}`);
  await guide.getByText('1 of 6').waitFor();
  await context.close();
});

test('a target that is being written for one flight is not given to the one that comes', async () => {
  const { page, context } = await openHolding(browser, served.address);
  await give(page, log('first.csv'));
  await reviewStands(page);
  await dropOn(page, { ...log('second.csv'), text: `${log('x').text}\n` });
  await page.locator('.context', { hasText: 'second' }).waitFor();
  await reviewStands(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await hold(page, 'review');
  await page.getByRole('button', { name: 'first', exact: true }).click();
  await isHeld(page, 'review');
  await page.getByRole('link', { name: 'Review' }).click();
  await page.getByRole('textbox', { name: /^Target orbit/ }).fill('321');
  await letGo(page);
  await page.locator('.context', { hasText: 'first' }).waitFor();
  await page.waitForTimeout(700);
  await page.locator('.announcements .working').waitFor({ state: 'detached' });
  await expect.poll(() => page.getByText(/321/).count()).toBe(0);
  await expect.poll(() => page.getByRole('textbox', { name: /^Target orbit/ }).inputValue()).toBe('');
  await context.close();
});

test.each(['the book', 'the samples'] as const)(
  'a comparison that the address names waits for all its flights, also for those of %s',
  async (late) => {
    const { page, context } = await openHolding(browser, `${served.address}#/logbook`);
    await give(page, ...filesOf('thimble-teasel-1'));
    await reviewStands(page);
    const kept = new URL(page.url()).hash.match(/book(?::|%3A)([0-9a-f]+)/)?.[1] ?? '';
    if (late === 'the book') {
      await context.addInitScript(() => {
        globalThis.holding.kinds = ['book.open'];
      });
    }
    const second = await context.newPage();
    let arrive: () => void = () => {};
    const may = new Promise<void>((go) => {
      arrive = go;
    });
    await second.route(/samples\/index\.json/, async (route) => {
      if (late === 'the samples') await may;
      await route.continue();
    });
    const listed = second.waitForResponse(/samples\/index\.json/);
    await second.goto(`${served.address}#/attempts?flights=book:${kept},${other}`);
    if (late === 'the book') await listed;
    else await second.getByText('thimble-teasel-1').first().waitFor({ state: 'attached' });
    await second.waitForTimeout(500);
    arrive();
    await letGo(second);
    await second.getByRole('button', { name: 'Compare 2 flights' }).waitFor();
    await second.locator('.compared').waitFor();
    await second.locator('.working').waitFor({ state: 'detached' });
    expect(decodeURIComponent(second.url())).toContain(`flights=book:${kept},${other}`);
    await context.close();
  },
);

test('a screen that cannot be fetched says so and is fetched when asked again', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${short}`);
  await reviewStands(page);
  await page.route(/CardScreen/, (route) => route.abort());
  await page.getByRole('link', { name: 'Mission card' }).click();
  const again = page.getByRole('button', { name: 'Try again' });
  await again.waitFor();
  await page.unroute(/CardScreen/);
  await again.click();
  await page.getByRole('form', { name: 'Mission card as a form' }).waitFor();
  await context.close();
});

test('a stretch that is being drawn when the causes come is framed all the same', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/review?flight=${short}`, [
    'causes',
  ]);
  await reviewStands(page);
  await isHeld(page, 'causes');
  const plot = page.locator('.strip .u-over').first();
  await plot.scrollIntoViewIfNeeded();
  const drawn = await plot.elementHandle();
  const box = await plot.boundingBox();
  if (box === null) throw new Error('the strip is not drawn');
  await page.mouse.move(box.x + 100, box.y + 30);
  await page.mouse.down();
  await page.mouse.move(box.x + 300, box.y + 30, { steps: 4 });
  await letGo(page);
  await page.getByText('choose one to frame it in every chart').waitFor({ state: 'attached' });
  expect(await drawn?.evaluate((e) => e.isConnected)).toBe(true);
  await page.mouse.up();
  await expect.poll(() => page.url()).toMatch(/from=/);
  await page.locator('.drag-band').waitFor({ state: 'detached' });
  await context.close();
});

test('causes that come leave the reader of the guide where they are', async () => {
  const { page, context } = await openHolding(browser, served.address, ['causes']);
  await page.getByRole('button', { name: 'Read a first review with a guide' }).click();
  const guide = page.getByRole('complementary', { name: 'Guided first review' });
  const next = guide.getByRole('button', { name: 'Next' });
  await expect.poll(() => next.evaluate((e) => e === document.activeElement)).toBe(true);
  await reviewStands(page);
  await isHeld(page, 'causes');
  const word = page.getByRole('button', { name: 'Terms of the orbit' });
  await word.scrollIntoViewIfNeeded();
  await word.focus();
  const scrolled = await page.evaluate(() => scrollY);
  expect(scrolled).toBeGreaterThan(100);
  await letGo(page);
  await page.getByText('choose one to frame it in every chart').waitFor({ state: 'attached' });
  // Longer than a smooth way back would need to begin.
  await page.waitForTimeout(400);
  expect(await word.evaluate((e) => e === document.activeElement)).toBe(true);
  expect(await page.evaluate(() => scrollY)).toBeGreaterThanOrEqual(scrolled);
  expect(await page.locator('[data-pointed]').count()).toBe(1);
  await context.close();
});

test('a column said anew counts in the next comparison', async () => {
  const { page, context } = await openHolding(browser, `${served.address}#/logbook`);
  await give(page, ...filesOf('bobstay-tansy-1'));
  await reviewStands(page);
  const compared = async () => {
    await page.getByRole('link', { name: 'Attempts' }).click();
    const whole = page.getByRole('button', { name: 'The whole logbook (1)' });
    // Open while nothing was compared yet.
    const choice = page.locator('.choose-flights');
    await choice.waitFor();
    if ((await choice.getAttribute('open')) === null) await choice.locator('summary').click();
    await whole.click();
    await page.getByRole('button', { name: 'Show one flight' }).click();
    await page.locator('.compared').waitFor();
    await page.locator('.attempts-screen .working').waitFor({ state: 'detached' });
    return page.getByRole('region', { name: 'Table of attempts' }).textContent();
  };
  const before = await compared();
  await page.getByRole('link', { name: 'Columns' }).click();
  await page.getByRole('combobox', { name: /^Unit of .*alt/i }).selectOption('ft');
  await page.getByText('as you said').first().waitFor();
  await expect.poll(compared, { timeout: 60_000 }).not.toBe(before);
  await context.close();
});

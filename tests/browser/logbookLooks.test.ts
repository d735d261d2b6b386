import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import { filesOf, give } from './giveFiles.ts';
import { launch, openPage } from './openPage.ts';
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

const themes = ['light', 'dark'] as const;

/** A book with everything on the screen that can be: tags, notes, a form, a file left aside, an undo. */
async function fullBook(width: number): Promise<{ page: Page; complaints: readonly string[] }> {
  const { page, complaints } = await openPage(browser, `${served.address}#/logbook`, {
    width,
    height: width < 600 ? 844 : 800,
    touch: width < 600,
  });
  const flights = ['bobstay-medlar-4', 'bobstay-tansy-1', 'thimble-teasel-1', 'bobstay-teasel-1'];
  await give(page, ...flights.flatMap(filesOf), { name: 'shopping.txt', text: 'bread\n' });
  await page.getByText('4 flights came into the logbook').waitFor({ timeout: 80_000 });
  const edit = (title: string) =>
    page.getByRole('button', { name: `Edit what is noted of ${title}` }).click();
  await edit('thimble-teasel-1');
  await page.getByLabel('Tags').fill('windy, second try');
  await page.getByLabel('Notes').fill('Turned late.\nNext time: pitch over at 8 s.');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('form').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Delete bobstay-teasel-1' }).click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await page.getByLabel('Group by').selectOption('both');
  await page.getByLabel('Search').fill('e');
  await edit('bobstay-tansy-1');
  return { page, complaints };
}

/** Interactive parts smaller than WCAG 2.2 asks (2.5.8), except where only a keyboard comes. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a, summary, label.button, select, input, textarea')]
      .map((e) => ({ text: e.textContent, box: e.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && (box.height < 23.9 || box.width < 23.9) && box.right > 0)
      .map(({ text, box }) => `${text} ${box.width}×${box.height}`),
  );
}

test.each([390, 1280, 2560])(
  'at %i px a full logbook has no fault that axe knows and fits',
  async (width) => {
    const { page, complaints } = await fullBook(width);
    for (const theme of themes) {
      await page.emulateMedia({ colorScheme: theme });
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await page.screenshot({ path: `tests/output/logbook-full-${width}-${theme}.png`, fullPage: true });
    }
    expect(await smallTargets(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test('at 200 % zoom nothing scrolls sideways', async () => {
  // A desk of 1280 px at 200 % is laid out like one of 640.
  const { page } = await fullBook(640);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
  await page.context().close();
});

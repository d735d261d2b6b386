import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { filesOf, give } from './giveFiles.ts';
import { bothThemesHold, fits, picturesFit, smallParts } from './looks.ts';
import { launch, openPage, type Watched } from './openPage.ts';
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

/** A book with everything on the screen that can be: tags, notes, a form, a file left aside, an undo. */
async function fullBook(width: number): Promise<Watched> {
  const watched = await openPage(browser, `${served.address}#/logbook`, {
    width,
    height: width < 600 ? 844 : 800,
    touch: width < 600,
  });
  const { page } = watched;
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
  return watched;
}

test.each([390, 1280, 2560])(
  'at %i px a full logbook has no fault that axe knows and fits',
  async (width) => {
    const watched = await fullBook(width);
    await picturesFit(watched, 'logbook-full', width);
    await bothThemesHold(watched.page, width);
    expect(await smallParts(watched.page)).toEqual([]);
    expect(watched.complaints).toEqual([]);
    await watched.context.close();
  },
);

test('at 200 % zoom nothing scrolls sideways', async () => {
  // A desk of 1280 px at 200 % is laid out like one of 640.
  const { page, context } = await fullBook(640);
  await fits(page, 640);
  await context.close();
});

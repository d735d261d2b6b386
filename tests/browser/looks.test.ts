import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bothThemesHold, picturesFit, smallParts } from './looks.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
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

const screens = ['logbook', 'review', 'card', 'columns'] as const;
async function show(screen: (typeof screens)[number], width: number) {
  const hash = screen === 'logbook' ? '#/logbook' : `#/${screen}?flight=sample:${shortFlight().id}`;
  const watched = await openPage(browser, `${served.address}${hash}`, {
    width,
    height: width < 600 ? 844 : 800,
    touch: width < 600,
  });
  if (screen === 'review') await reviewStands(watched.page);
  else if (screen === 'card')
    await watched.page.getByRole('region', { name: 'Vehicle from the log' }).waitFor();
  else if (screen === 'columns')
    await watched.page.getByRole('heading', { name: /columns are used/ }).waitFor();
  else await watched.page.getByRole('heading', { name: 'Sample flights' }).waitFor();
  return watched;
}

describe.each(screens)('%s', (screen) => {
  test.each([390, 1280, 2560])(
    'at %i px: nothing scrolls sideways, parts are large enough to press, axe is content; pictures kept',
    async (width) => {
      const watched = await show(screen, width);
      await picturesFit(watched, screen, width);
      // A wide table behind a chart scrolls within itself.
      for (const summary of await watched.page.locator('summary').all()) await summary.click();
      await bothThemesHold(watched.page, width);
      expect(await smallParts(watched.page)).toEqual([]);
      expect(watched.complaints).toEqual([]);
      await watched.context.close();
    },
  );
});

test('the theme can be switched and is kept', async () => {
  const { page, context } = await show('review', 1280);
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const before = await ground();
  await page.getByRole('button', { name: 'Dark theme' }).click();
  const after = await ground();
  expect(after).not.toBe(before);
  await page.reload();
  await reviewStands(page);
  expect(await ground()).toBe(after);
  await context.close();
});

test('on a phone the tables keep figure and unit and show the rest when asked', async () => {
  const { page, context } = await show('review', 390);
  const basis = page.getByRole('region', { name: 'Budget' }).getByRole('cell', { name: 'derived' }).first();
  expect(await basis.isVisible()).toBe(false);
  await page.getByRole('button', { name: 'Intervals and basis' }).click();
  expect(await basis.isVisible()).toBe(true);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await context.close();
});

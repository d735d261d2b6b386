import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
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
const themes = ['light', 'dark'] as const;

async function show(screen: (typeof screens)[number], width: number, theme: (typeof themes)[number]) {
  const hash = screen === 'logbook' ? '#/logbook' : `#/${screen}?flight=sample:${shortFlight().id}`;
  const watched = await openPage(browser, `${served.address}${hash}`, {
    width,
    height: width < 600 ? 844 : 800,
    theme,
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
  test.each(themes)('has no violation that axe knows of WCAG 2.2 AA, %s', async (theme) => {
    for (const width of [1280, 390]) {
      const { page, context } = await show(screen, width, theme);
      for (const summary of await page.locator('summary').all()) await summary.click();
      // A wide table behind a chart scrolls within itself.
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await axeViolations(page)).toEqual([]);
      await context.close();
    }
  });

  test.each([390, 1280, 2560])('fits %i px without scrolling sideways; pictures kept', async (width) => {
    for (const theme of themes) {
      const { page, context, complaints } = await show(screen, width, theme);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await page.screenshot({ path: `tests/output/${screen}-${width}-${theme}.png`, fullPage: true });
      expect(complaints).toEqual([]);
      await context.close();
    }
  });
});

test('the theme can be switched and is kept', async () => {
  const { page, context } = await show('review', 1280, 'light');
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
  const { page, context } = await show('review', 390, 'light');
  const basis = page.getByRole('region', { name: 'Budget' }).getByRole('cell', { name: 'derived' }).first();
  expect(await basis.isVisible()).toBe(false);
  await page.getByRole('button', { name: 'Intervals and basis' }).click();
  expect(await basis.isVisible()).toBe(true);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await context.close();
});

test.each(screens)(
  'interactive parts are at least 24 px in both directions (WCAG 2.2, 2.5.8): %s',
  async (screen) => {
    for (const width of [390, 1280]) {
      const { page, context } = await show(screen, width, 'light');
      const small = await page.evaluate(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            // A tick inside its label is pressed by the whole label.
            'button, a, summary, label:has(input), select, input:not(label *), textarea, [role=slider]',
          ),
        ]
          .map((e) => ({ text: e.textContent, box: e.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 1 && (box.height < 23.9 || box.width < 23.9) && box.right > 0)
          .map(({ text, box }) => `${text} ${box.width}×${box.height}`),
      );
      expect(small).toEqual([]);
      await context.close();
    }
  },
);

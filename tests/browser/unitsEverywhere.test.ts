import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openFurther } from './furtherScreens.ts';
import { give, log, card as shortCard } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
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

/** What must not be left of other units, by the choice. `m/s each second` is a speed. */
const strays = {
  si: /(?<![\w/])(?:km|k?ft|kn)(?![\w/²³])|ft\/s/u,
  ft: /(?<![\w/])(?:km|kn)(?![\w/²³])|(?<![\w·])m\/s|\d[ \u00a0]m(?![\w/²³])/u,
  kn: /(?<![\w/])km(?![\w/²³])|(?<![\w·])(?:m|ft)\/s(?!²)|(?<!f)(?<![\w·])m\/s²|\d[ \u00a0]m(?![\w/²³])/u,
} as const;
type Choice = keyof typeof strays;

/**
 * What a reader sees or is told: texts, labels, titles and what stands in the entries. Left out: the choice of units
 * itself and of the log's columns, what the log itself says, the card's text (which is a file in SI).
 */
function wordsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const out: string[] = [];
    const apart = 'select, textarea, script, style, [translate=no], .columns-table th, .columns-table .first';
    const textsIn = (root: Node): string[] => {
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
      const texts: string[] = [];
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        if (node.parentElement?.closest(apart) === null) texts.push(node.textContent ?? '');
      }
      return texts;
    };
    out.push(...textsIn(document.body));
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder]')) {
      if (element.closest(apart) !== null) continue;
      for (const name of ['aria-label', 'title', 'placeholder']) {
        const text = element.getAttribute(name);
        if (text !== null) out.push(text);
      }
    }
    // A number and its unit often stand in two cells or two elements: they are read together too.
    for (const row of document.querySelectorAll('tr, p, li, h1, h2, h3, dt, dd, label, figcaption'))
      out.push(textsIn(row).join(' '));
    return out.map((text) => text.replace(/\s+/gu, ' '));
  });
}

async function leftovers(page: Page, choice: Choice): Promise<string[]> {
  for (const summary of await page.locator('summary:visible').all()) {
    if (!(await summary.evaluate((s) => (s.parentElement as HTMLDetailsElement).open))) await summary.click();
  }
  const words = await wordsOf(page);
  return [...new Set(words.filter((text) => strays[choice].test(text)).map((text) => text.slice(0, 160)))];
}

async function choose(page: Page, choice: Choice): Promise<void> {
  await page.getByRole('combobox', { name: /units/i }).selectOption(choice);
}

const sample = `sample:${shortFlight().id}`;

describe.each(Object.keys(strays) as Choice[])('units chosen: %s', (choice) => {
  test('review, mission card and columns', async () => {
    const { page, context } = await openPage(browser, `${served.address}#/review?flight=${sample}`);
    await reviewStands(page);
    await page
      .getByText(/flown again|What cost most/)
      .first()
      .waitFor();
    await choose(page, choice);
    await page.getByRole('slider').first().focus();
    await page.keyboard.press('ArrowRight');
    expect(await leftovers(page, choice)).toEqual([]);
    await page.getByRole('link', { name: 'Mission card' }).click();
    await page.getByText(/The card is right/).waitFor();
    expect(await leftovers(page, choice)).toEqual([]);
    await page.getByRole('link', { name: 'Columns' }).click();
    await page.getByRole('heading', { name: /columns are used/ }).waitFor();
    expect(await leftovers(page, choice)).toEqual([]);
    await context.close();
  });

  test('logbook', async () => {
    const { page, context } = await openPage(browser, `${served.address}#/logbook`);
    await give(page, log('dusk.csv'), shortCard('dusk.mission.json'));
    await reviewStands(page);
    await choose(page, choice);
    await page.getByRole('link', { name: 'Logbook' }).click();
    await page.getByRole('heading', { name: 'Sample flights' }).waitFor();
    expect(await leftovers(page, choice)).toEqual([]);
    await context.close();
  });

  test('the saved report', async () => {
    const { page, context } = await openPage(browser, `${served.address}#/review?flight=${sample}`);
    await reviewStands(page);
    await choose(page, choice);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save report' }).click(),
    ]);
    await page.setContent(readFileSync(await download.path(), 'utf8'));
    expect(await leftovers(page, choice)).toEqual([]);
    await context.close();
  });

  test.each(['plan', 'attempts', 'way-down'] as const)('%s', async (screen) => {
    const watched = await openFurther(browser, served.address, screen);
    await choose(watched.page, choice);
    expect(await leftovers(watched.page, choice)).toEqual([]);
    await watched.context.close();
  });
});

import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import type { Watched } from './openPage.ts';

const themes = ['light', 'dark'] as const;

/**
 * A screen does not scroll sideways, in either theme, and asked nothing of other hosts; its pictures are kept.
 * @param part what of it the pictures show
 */
export async function picturesFit(
  { page, strays }: Watched,
  name: string,
  width: number,
  part: 'page' | 'window' = 'page',
): Promise<void> {
  for (const theme of themes) {
    await page.emulateMedia({ colorScheme: theme });
    await fits(page, width);
    const path = `tests/output/${name}-${width}-${theme}.png`;
    await page.screenshot({ path, fullPage: part === 'page' });
  }
  expect(strays).toEqual([]);
}

/**
 * No violation that axe knows of WCAG 2.2 AA and no scrolling sideways, in either theme. A phone is asked in the dark,
 * a wide desk not at all: what axe looks at but colours is there as at 1280 px, and colours are the theme's.
 */
export async function bothThemesHold(page: Page, width: number): Promise<void> {
  for (const theme of themes) {
    await page.emulateMedia({ colorScheme: theme });
    await fits(page, width);
    if (width === 1280 || (width < 600 && theme === 'dark'))
      expect(await axeViolations(page), theme).toEqual([]);
  }
}

/** Nothing is wider than the window, once the charts are drawn for it. */
export async function fits(page: Page, width: number): Promise<void> {
  await expect
    .poll(() => page.evaluate(() => document.documentElement.scrollWidth), { timeout: 10_000 })
    .toBeLessThanOrEqual(width);
}

/** Parts to press that are smaller than 24 px in a direction (WCAG 2.2, 2.5.8). */
export function smallParts(page: Page): Promise<string[]> {
  return page.evaluate(() =>
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
}

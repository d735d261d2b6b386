import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { filesOf } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
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

/** Name of what has the focus, as a screen reader would begin to say it. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return '';
    const labels = at instanceof HTMLInputElement ? [...(at.labels ?? [])] : [];
    return (at.getAttribute('aria-label') ?? labels[0]?.textContent ?? at.textContent ?? '').trim();
  });
}

/** Presses Tab until something of this name has the focus, which must be seen. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab');
    if (!name.test(await focused(page))) continue;
    const outlined = await page.evaluate(() => {
      const at = document.activeElement;
      const label = at instanceof HTMLInputElement ? at.labels?.[0] : undefined;
      return [at, label].some((e) => e && getComputedStyle(e).outlineStyle !== 'none');
    });
    expect(outlined, `the focus on ${name} is seen`).toBe(true);
    return;
  }
  throw new Error(`Tab never came to ${name}`);
}

test('by keyboard alone from the picker to the review and the print dialog', async () => {
  const { page, context, complaints } = await openPage(browser, served.address);
  await page.evaluate(() => {
    document.body.dataset.printed = '0';
    window.print = () => {
      document.body.dataset.printed = '1';
    };
  });
  // A listener from the start: the browser is told in time that no dialog of the system is wanted.
  page.on('filechooser', () => {});
  await tabTo(page, /^Choose a flight log/);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')]);
  await chooser.setFiles(
    filesOf('bobstay-medlar-4').map(({ name, text }) => ({
      name,
      mimeType: 'text/plain',
      buffer: Buffer.from(text),
    })),
  );
  await reviewStands(page);
  // The reader is led to the verdict, after the paint.
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
  expect(await focused(page)).toMatch(/^Not in orbit/);

  await tabTo(page, /^gravity/);
  await tabTo(page, /^Time cursor/);
  await page.keyboard.press('End');
  await tabTo(page, /^Print/);
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.body.dataset.printed)).toBe('1');

  // And on: the logbook, a note, a deletion and its undo.
  for (let i = 0; i < 200 && !/^Logbook/.test(await focused(page)); i++)
    await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, /^Edit/);
  await page.keyboard.press('Enter');
  await page.keyboard.type('Evening flight');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Evening flight', exact: true }).waitFor();
  await expect.poll(() => focused(page)).toMatch(/^Edit/);
  await tabTo(page, /^Delete/);
  await page.keyboard.press('Enter');
  await expect.poll(() => focused(page)).toBe('Undo');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Evening flight', exact: true }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

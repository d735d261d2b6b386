import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reportHtml } from '../../src/exchange/report/reportHtml.ts';
import { reviewSix } from '../review/reviewSix.ts';
import { launch, openPage } from './openPage.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-report-'));
const file = join(folder, 'report.html');
const address = pathToFileURL(file).href;
let browser: Browser;

beforeAll(async () => {
  writeFileSync(file, reportHtml(await reviewSix('osselby-short')));
  browser = await launch();
}, 300_000);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

test.each([1280, 390])(
  'opens from a file at %d px: nothing cut, nothing fetched, nothing wrong',
  async (width) => {
    const { page, context, complaints, strays } = await openPage(browser, address, { width });
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/^Not in orbit: 361/);
    const { scroll, client } = await page.evaluate(() => ({
      scroll: document.documentElement.scrollWidth,
      client: document.documentElement.clientWidth,
    }));
    expect(scroll).toBeLessThanOrEqual(client);
    // Each chart is drawn for wide and narrow, and one of the two is shown.
    expect(await page.getByRole('img', { name: /^Margin against time/ }).count()).toBe(1);
    await page.screenshot({ path: `tests/output/report-${width}.png`, fullPage: true });
    expect(complaints).toEqual([]);
    expect(strays.filter((s) => s !== address)).toEqual([]);
    await context.close();
  },
);

test('has no accessibility fault that axe can see', async () => {
  const { page, context } = await openPage(browser, address);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html ?? ''}`)).toEqual([]);
  }
  await context.close();
});

test.each(['A4', 'Letter'] as const)('prints on %s in a few pages', async (format) => {
  const { page, context } = await openPage(browser, address);
  const pdf = (await page.pdf({ format, printBackground: true })).toString('latin1');
  const pages = pdf.match(/\/Type\s*\/Page(?![a-z])/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(3);
  expect(pages).toBeLessThanOrEqual(7);
  await context.close();
});

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, openPage, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

let browser: Browser;
let served: ServedPage;
let review: string;

beforeAll(async () => {
  served = await servePage();
  review = `${served.address}#/review?flight=sample:${shortFlight().id}`;
  browser = await launch();
}, 300_000);

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

test('a term is explained where it stands, by mouse and by touch', async () => {
  for (const touch of [false, true]) {
    const { page, context } = await openPage(browser, review, { touch, width: touch ? 390 : 1280 });
    await reviewStands(page);
    const word = page.getByRole('region', { name: 'Ledger' }).getByRole('button', { name: 'gravity' });
    await (touch ? word.tap() : word.click());
    const panel = page.getByRole('dialog', { name: 'gravity loss' });
    await panel.getByText(/∫ g · sin γ dt/).waitFor();
    await panel.getByRole('button', { name: 'Close' }).click();
    expect(await panel.isVisible()).toBe(false);
    await context.close();
  }
});

test('by keyboard all terms of a section are one button away, and the focus comes back', async () => {
  const { page, context } = await openPage(browser, review);
  await reviewStands(page);
  for (const of of ['Margin', 'the ledger', 'the budget', 'the orbit', 'the strips']) {
    const button = page.getByRole('button', { name: `Terms of ${of}` });
    await button.focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('dialog', { name: `Terms of ${of}` });
    await panel.waitFor();
    expect(await panel.getByRole('term').count()).toBeGreaterThan(2);
    expect(await panel.evaluate((e) => e.contains(document.activeElement))).toBe(true);
    await page.keyboard.press('Escape');
    expect(await button.evaluate((e) => e === document.activeElement)).toBe(true);
  }
  await context.close();
});

test('the guide leads through a first review, by keyboard, and is offered once', async () => {
  const { page, context, complaints } = await openPage(browser, served.address);
  await page.getByRole('button', { name: 'Read a first review with a guide' }).press('Enter');
  const guide = page.getByRole('complementary', { name: 'Guided first review' });
  const pointed: string[] = [];
  for (let i = 1; i <= 6; i++) {
    await guide.getByText(`${i} of 6`).waitFor();
    await page.locator('[data-pointed]').waitFor({ state: 'attached' });
    pointed.push((await page.locator('[data-pointed]').getAttribute('class')) ?? 'verdict');
    const next = guide.getByRole('button', { name: /^(Next|Done)$/ });
    await expect.poll(() => next.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
  }
  await guide.waitFor({ state: 'detached' });
  expect(pointed).toEqual(['verdict', 'ledger-bar', 'hero', 'ledger', 'tables', 'strips']);
  await page.reload();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByRole('heading', { name: 'Sample flights' }).waitFor();
  expect(await page.getByRole('button', { name: 'Read a first review with a guide' }).count()).toBe(0);
  await page.getByRole('button', { name: 'Guided first review' }).click();
  await guide.getByText('1 of 6').waitFor();
  await page.keyboard.press('Escape');
  await guide.waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
  await context.close();
});

test('units are chosen once for the whole page, kept, and never go into a file', async () => {
  const { page, context } = await openPage(browser, review);
  await reviewStands(page);
  const units = page.getByRole('combobox', { name: 'Units' });
  await units.selectOption('kn');
  await page.getByRole('heading', { level: 1, name: /Not in orbit: \d+ kn short/ }).waitFor();
  const main = page.getByRole('main');
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden from the reader does not count here
  expect(await main.innerText()).not.toMatch(/\d\s(?:m\/s|km)(?![²\w])/);
  await page.getByText('Margin as a table').click();
  await page.getByRole('columnheader', { name: /to go.*kn/ }).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save JSON' }).click(),
  ]);
  expect(await download.createReadStream().then(text)).toContain('m/s short');
  await page.reload();
  await page.getByRole('heading', { level: 1, name: /kn short/ }).waitFor();
  await units.selectOption('ft');
  await page.getByRole('heading', { level: 1, name: /ft\/s short/ }).waitFor();
  await context.close();
});

async function text(stream: NodeJS.ReadableStream): Promise<string> {
  let whole = '';
  for await (const part of stream) whole += String(part);
  return whole;
}

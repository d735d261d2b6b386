import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { card, give, log } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
import { samples } from './sampleList.ts';
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

/** A whole review lies between. */
const slow = { timeout: 20_000 };

const feet = () => samples.find((s) => s.log === 'bobstay-teasel-1.csv')?.id ?? '';
const row = (page: Page, header: string) =>
  page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: header, exact: true }) });

test('every column says what it was taken for, in which unit, from which words and how sure', async () => {
  const { page, context, complaints } = await openPage(
    browser,
    `${served.address}#/columns?flight=sample:${feet()}`,
  );
  await page.getByRole('heading', { name: '6 of 6 columns are used.' }).waitFor();
  const altitude = row(page, 'Altitude [ft]');
  expect(await altitude.getByRole('combobox', { name: /^Channel/ }).inputValue()).toBe('altitude');
  expect(await altitude.getByRole('combobox', { name: /^Unit/ }).inputValue()).toBe('ft');
  expect(await altitude.textContent()).toMatch(/sure, 95 %.*the header says “altitude”.*0, 0, 2, 4/i);
  expect(await altitude.locator('svg path').getAttribute('d')).toMatch(/^M2\.0 28\.0L/);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a choice reads the flight anew, is remembered for logs with the same headers, and can be forgotten', async () => {
  const { page, context } = await openPage(browser, served.address);
  await give(page, log('one.csv'), card('one.mission.json'));
  await reviewStands(page);
  const verdict = await page.getByRole('heading', { level: 1 }).textContent();
  await page.getByRole('link', { name: 'Columns' }).click();
  const first = await page.getByRole('rowheader').first().textContent();
  expect(first).not.toBeNull();
  const unit = page.getByRole('combobox', { name: /^Unit of .*alt/i });
  const was = await unit.inputValue();
  await unit.selectOption('ft');
  const forget = page.getByRole('button', { name: /^Forget all choices/ });
  await forget.waitFor();
  await page.getByText('as you said').first().waitFor();
  await page.getByRole('link', { name: 'Review' }).click();
  expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toBe(verdict);

  await page.getByRole('link', { name: 'Logbook' }).click();
  await give(page, { ...log('two.csv'), text: `${log('x').text}\n` }, card('two.mission.json'));
  await reviewStands(page);
  await page.getByRole('link', { name: 'Columns' }).click();
  await expect
    .poll(() => page.getByRole('combobox', { name: /^Unit of .*alt/i }).inputValue(), slow)
    .toBe('ft');
  await forget.click();
  await expect
    .poll(() => page.getByRole('combobox', { name: /^Unit of .*alt/i }).inputValue(), slow)
    .toBe(was);
  await context.close();
});

test('a column can be left alone', async () => {
  const { page, context } = await openPage(browser, `${served.address}#/columns?flight=sample:${feet()}`);
  await row(page, 'Pitch [deg]')
    .getByRole('combobox', { name: /^Channel/ })
    .selectOption('none');
  await page.getByRole('heading', { name: '5 of 6 columns are used.' }).waitFor();
  await page.getByText(/^Pitch: no steering/).waitFor();
  await context.close();
});

test('a log whose words name nothing is read once its columns are said, by keyboard', async () => {
  const { page, context } = await openPage(browser, served.address);
  const renamed = log('x').text.replace(/^.*\n/, 'one,two,three,four,five,six\n');
  await give(page, { name: 'odd.csv', text: renamed });
  await page.getByRole('alert').getByRole('button', { name: 'Say which columns they are' }).press('Enter');
  await page.getByRole('heading', { name: /^Say which columns of odd\.csv/ }).waitFor();
  const said = { one: 'time', two: 'altitude', three: 'speed', four: 'mass', five: 'throttle', six: 'pitch' };
  for (const [name, channel] of Object.entries(said)) {
    await page.getByRole('combobox', { name: `Channel of ${name}`, exact: true }).selectOption(channel);
  }
  await page.getByRole('button', { name: 'Read it with these columns' }).press('Enter');
  await reviewStands(page);
  await context.close();
});

test('one flight of a file that holds several is chosen', async () => {
  const { page, context } = await openPage(browser, served.address);
  const rows = log('x').text.trim().split('\n');
  await give(page, { name: 'both.csv', text: [...rows, ...rows.slice(1)].join('\n') });
  await reviewStands(page);
  const part = page.getByRole('combobox', { name: 'Flight of this file' });
  expect(await part.inputValue()).toBe('1');
  await part.selectOption('2');
  await page.getByRole('link', { name: 'Columns' }).click();
  await page
    .getByText(/the file holds 2 flights, and this is number 2/)
    .first()
    .waitFor();
  expect(await part.inputValue()).toBe('2');
  await context.close();
});

test('without a card the world and the target orbit are picked on the review screen', async () => {
  const { page, context } = await openPage(browser, served.address);
  await give(page, log('bare.csv'));
  await reviewStands(page);
  await page.getByRole('combobox', { name: 'World' }).selectOption('mars');
  await page
    .getByText(/Mars, lowest orbit/)
    .first()
    .waitFor();
  const target = page.getByRole('textbox', { name: /^Target orbit/ });
  await target.fill('100 mi');
  await target.press('Enter');
  await page
    .getByText(/orbit 16[01](\.9)? × 16[01](\.9)? km/)
    .first()
    .waitFor();
  // It lasts, and it is the flight's mission card.
  await page.reload();
  await page
    .getByText(/orbit 16[01](\.9)? × 16[01](\.9)? km/)
    .first()
    .waitFor();
  await page.getByRole('button', { name: 'Write a mission card' }).click();
  await page.getByRole('form', { name: 'Mission card as a form' }).waitFor();
  await context.close();
});

import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import { readPlan } from '../../src/plan/readPlan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { atRest } from './furtherScreens.ts';
import { card, give, log } from './giveFiles.ts';
import { launch, openPage, reviewStands, type Watched } from './openPage.ts';
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

const DEG = 180 / Math.PI;
const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const check = (page: Page) => page.getByRole('region', { name: 'Check' });
const cell = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const event = (page: Page, row: number) =>
  page.getByRole('combobox', { name: `event, row ${row}`, exact: true });
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();

/** Opens the editor on the flight that ran dry, which has no plan. */
async function openEditor(): Promise<Watched> {
  const hash = `#/plan-editor?flight=sample:${shortFlight().id}`;
  const watched = await openPage(browser, `${served.address}${hash}`);
  await heading(watched.page).filter({ hasText: 'A plan for' }).waitFor();
  await atRest(watched);
  // The rows come after the paint; a start takes their place.
  await cell(watched.page, 'time, row 1').waitFor();
  return watched;
}

/** Every row as it stands: position, pitch, throttle, event. */
function rows(page: Page): Promise<string[]> {
  return page
    .getByRole('table', { name: 'Rows of the plan' })
    .locator('tbody tr')
    .evaluateAll((all) =>
      all
        .map((tr) => [...tr.querySelectorAll('input')].map((i) => i.value).join('|'))
        .filter((text) => text !== ''),
    );
}

async function saved(page: Page): Promise<{ name: string; plan: Plan }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save .* as a file$/ }).click(),
  ]);
  const name = download.suggestedFilename();
  return { name, plan: await readPlan(readFileSync(await download.path()), name, readMission({})) };
}

/** Puts a text into the clipboard's event, as a paste does. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((given) => {
    const data = new DataTransfer();
    data.setData('text/plain', given);
    const at = document.activeElement ?? document.body;
    at.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);
}

test('a plan is written from scratch by keyboard alone, checked, saved, and read back equal by the engine', async () => {
  const { page, context, complaints, strays } = await openPage(browser, `${served.address}#/plan-editor`);
  await heading(page).filter({ hasText: 'A plan from scratch' }).waitFor();
  const type = async (...keys: readonly string[]) => {
    for (const key of keys) {
      if (key !== '') await page.keyboard.type(key);
      await page.keyboard.press('Tab');
    }
  };
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
  await page.getByLabel('Name', { exact: true }).focus();
  await page.keyboard.press('Control+a');
  await type('soft-gate');
  // The choice of the axis by its first letter, then past the tools of the row to the cells.
  await page.keyboard.type('alt');
  for (let i = 0; i < 12 && !/row 1$/.test(await focused()); i++) await page.keyboard.press('Tab');
  expect(await focused()).toBe('altitude, row 1');
  await type('0', '90', '100', '');
  await type('1,5', '88°', '', 'pitch-over');
  await type('20', '50', '70 %', '');
  // The last cell of the last row: Enter makes another row.
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  expect(await focused()).toBe('event, row 4');
  await page.keyboard.type('cutof');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+Tab');
  await type('140', '−2', '100');
  await check(page).getByText('1 cell has to be mended; it is told at the row.').waitFor();
  expect(await event(page, 4).getAttribute('aria-invalid')).toBe('true');
  const told = await event(page, 4).getAttribute('aria-describedby');
  expect(await page.locator(`#${told}`).textContent()).toMatch(
    /^There is no event “cutof”; did you mean “cutoff”\?/,
  );
  await type('cutoff');
  await check(page).getByText('The plan is right.').waitFor();
  expect(await check(page).textContent()).toMatch(/4 rows, altitude 0\.0 to 140\.0\skm/);

  const { name, plan } = await saved(page);
  expect(name).toBe('soft-gate.plan.csv');
  expect(plan.axis).toBe('altitude');
  expect([...plan.axisValues]).toEqual([0, 1500, 20_000, 140_000]);
  expect(Array.from(plan.pitch_rad ?? [], (x) => Math.round(x * DEG * 1e9) / 1e9)).toEqual([90, 88, 50, -2]);
  expect(plan.throttle?.[2]).toBeCloseTo(0.7, 12);
  expect(plan.events.map((e) => [e.name, e.at])).toEqual([
    ['pitch-over', 1500],
    ['cutoff', 140_000],
  ]);
  for (const chart of ['Pitch', 'Throttle'])
    expect(await page.getByRole('img', { name: new RegExp(`^${chart}.*planned from`) }).count()).toBe(1);
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

test('rows are put in, moved and taken out by keys, and every step is undone and made again', async () => {
  const { page, context } = await openEditor();
  await press(page, 'A gravity turn (invented)');
  const before = await rows(page);
  expect(before.slice(0, 3)).toEqual(['0|90|100|', '15|90|100|pitch-over', '25|85|100|']);
  await cell(page, 'pitch, row 2').focus();
  await page.keyboard.press('Alt+Enter');
  expect((await rows(page)).slice(1, 4)).toEqual(['15|90|100|pitch-over', '20|||', '25|85|100|']);
  await page.keyboard.press('Alt+ArrowUp');
  expect((await rows(page)).slice(1, 3)).toEqual(['20|||', '15|90|100|pitch-over']);
  // The focus goes with the row.
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('time, row 2');
  await page
    .getByText(/The plan’s time goes back from 20 to 15 s\. Put its rows in rising order\./)
    .waitFor();
  await page.keyboard.press('Alt+Delete');
  expect(await rows(page)).toEqual(before);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.type('26');
  await page.keyboard.press('Control+z');
  expect(await rows(page)).toEqual(before);
  await page.keyboard.press('Control+z');
  expect((await rows(page)).slice(1, 3)).toEqual(['20|||', '15|90|100|pitch-over']);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await rows(page)).toEqual(before);
  await page.keyboard.press('Control+z');
  expect(await rows(page)).toEqual(['|||', '|||', '|||']);
  for (let i = 0; i < 5; i++) await press(page, 'Redo');
  expect((await rows(page))[2]).toBe('26|85|100|');

  await cell(page, 'time, row 1').focus();
  await press(page, 'Move down row 1');
  expect((await rows(page)).slice(0, 2)).toEqual(['15|90|100|pitch-over', '0|90|100|']);
  await press(page, 'Delete row 2');
  expect((await rows(page)).slice(0, 2)).toEqual(['15|90|100|pitch-over', '26|85|100|']);
  await context.close();
});

test('a table is pasted from a spreadsheet, with and without its headings', async () => {
  const { page, context } = await openEditor();
  await cell(page, 'time, row 2').focus();
  await paste(page, '0\t90\t1\n12,5\t85\t0,8\n300\t4\t1\n');
  expect(await rows(page)).toEqual(['|||', '0|90|100|', '12.5|85|80|', '300|4|100|']);
  await page.getByText('Their throttle was in fractions and stands here in percent.').waitFor();
  await check(page).getByText('The plan is right.').waitFor();
  // Anywhere on the screen, with other names, another order and other units.
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await paste(page, 'Throttle [%]\tAltitude [ft]\tPitch\n100\t0\t90\n65\t10000\t70\n');
  await page.getByText(/^The pasted table stands here, 2 rows\./).waitFor();
  expect(await rows(page)).toEqual(['0|90|100|', '3.048|70|65|']);
  expect(await page.getByLabel('Laid out against').inputValue()).toBe('altitude');
  await press(page, 'Undo');
  expect(await rows(page)).toEqual(['|||', '0|90|100|', '12.5|85|80|', '300|4|100|']);
  await context.close();
});

test('a flight is held against the plan at once; the logbook keeps it and leads back to it', async () => {
  const watched = await openPage(browser, served.address);
  const { page, context, complaints } = watched;
  await give(page, log('low.csv'), card('low.mission.json'));
  await reviewStands(page);
  await atRest(watched);
  await page.getByRole('link', { name: 'Against plan' }).click();
  await press(page, 'Write a plan');
  await heading(page).filter({ hasText: 'A plan for low' }).waitFor();
  await press(page, 'This flight as flown');
  await page.getByText(/^The controls that low flew\./).waitFor();
  await check(page).getByText('The plan is right.').waitFor();
  await press(page, 'Hold the flight against it');
  // Its own controls: what differs is what stands between the rows, 1 m/s or less where it was measured.
  await page
    .getByText(/The flight is held against this plan\. (As thrifty|Dearer|Thriftier)/)
    .waitFor({ timeout: 60_000 });
  const outcome = await page.getByText(/The flight is held against this plan/).textContent();
  const by = Number(/by (\d+) m\/s/.exec(outcome ?? '')?.[1] ?? 0);
  expect(by).toBeLessThanOrEqual(2);
  await press(page, 'See what differs');
  await page.getByText('plan: low.plan.csv').waitFor();

  await page.reload();
  await page.getByText('plan: low.plan.csv').waitFor();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await press(page, 'Plan of low');
  await heading(page).filter({ hasText: 'The plan of low' }).waitFor();
  await expect.poll(async () => (await rows(page)).length).toBeGreaterThan(10);
  await check(page).getByText('The plan is right.').waitFor();
  expect(await page.getByRole('button', { name: 'Hold the flight against it' }).isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a sample flight goes into the logbook with its plan', async () => {
  const { page, context } = await openEditor();
  await press(page, 'A gravity turn (invented)');
  await check(page).getByText('The plan is right.').waitFor();
  await press(page, 'Keep flight and plan in the logbook');
  await page.getByText('is in the logbook, with this plan.').waitFor();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await press(page, 'Plan of bobstay-medlar-4');
  await heading(page).filter({ hasText: 'The plan of bobstay-medlar-4' }).waitFor();
  await expect.poll(async () => (await rows(page))[1]).toBe('15|90|100|pitch-over');
  await page.getByText('The flight is held against this plan.').waitFor();
  await context.close();
});

test('unsaved edits survive a reload, which is said, and can be taken back', async () => {
  const watched = await openEditor();
  const { page, context } = watched;
  await press(page, 'A gravity turn (invented)');
  await cell(page, 'pitch, row 4').fill('61,5');
  await page.reload();
  await page.getByText('Edits that were left here unsaved are back.').waitFor();
  expect((await rows(page))[3]).toBe('60|61.5|80|');
  await press(page, 'Take the changes back');
  expect(await rows(page)).toEqual(['|||', '|||', '|||']);
  // A new name alone is an edit too.
  await page.getByLabel('Name', { exact: true }).fill('dusk');
  await page.reload();
  await page.getByText('Edits that were left here unsaved are back.').waitFor();
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('dusk');
  await press(page, 'Take the changes back');
  await page.reload();
  await heading(page).filter({ hasText: 'A plan for' }).waitFor();
  await expect.poll(() => rows(page)).toEqual(['|||', '|||', '|||']);
  await context.close();
});

test('a browser that keeps nothing is told so while the plan is written', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.goto(`${served.address}#/plan-editor`);
  await heading(page).filter({ hasText: 'A plan from scratch' }).waitFor();
  expect(
    await page
      .getByRole('alert')
      .getByText(/does not keep unsaved edits/)
      .count(),
  ).toBe(0);
  await cell(page, 'time, row 1').waitFor();
  await press(page, 'A gravity turn (invented)');
  await page
    .getByRole('alert')
    .getByText(/This browser does not keep unsaved edits/)
    .waitFor();
  expect((await rows(page)).length).toBe(8);
  await context.close();
});

test('the best ascent is searched with a way to stop it, and its rows stand in the editor', async () => {
  const { page, context } = await openEditor();
  await press(page, 'The best ascent');
  const start = page.getByRole('region', { name: 'Start from' });
  await start.getByRole('progressbar', { name: 'Done so far' }).waitFor();
  await start.getByRole('button', { name: 'Stop' }).click();
  expect(await rows(page)).toEqual(['|||', '|||', '|||']);
  await press(page, 'The best ascent');
  await page
    .getByText(/^The best ascent that was found: it arrives with [\d,]+ m\/s to spare\.$/)
    .waitFor({ timeout: 60_000 });
  await check(page).getByText('The plan is right.').waitFor();
  expect((await rows(page)).filter((r) => r.includes('cutoff')).length).toBe(2);
  expect((await saved(page)).name).toBe('bobstay-medlar-4.plan.csv');
  await context.close();
});

test('the axis is changed along the flight; another flight and a file are starts too; flown stands behind', async () => {
  const { page, context } = await openEditor();
  await press(page, 'A gravity turn (invented)');
  await page.getByLabel('Laid out against').selectOption('altitude');
  // This flight is at its highest at 350 s and comes down thereafter: the row of 400 s has no altitude.
  await page
    .getByText(/^Each row now stands at the altitude that .* had at the same moment\. One row is left open/)
    .waitFor();
  const high = await rows(page);
  expect(high[0]).toBe('0|90|100|');
  expect(Number(high[4]?.split('|')[0])).toBeGreaterThan(5);
  expect(high[7]).toBe('|0|100|');
  await page.getByText(/^A row of the plan has no altitude that can be read/).waitFor();
  await cell(page, 'altitude, row 8').fill('575 kft');
  await check(page).getByText('The plan is right.').waitFor();
  expect(await page.getByRole('img', { name: /^Pitch.*flown from .*planned from/ }).count()).toBe(1);

  await page.getByLabel('Another flight’s controls').selectOption({ label: 'Bobstay · Medlar, attempt 2' });
  await page.getByText(/^The controls that Bobstay · Medlar, attempt 2 flew\./).waitFor();
  expect(await page.getByLabel('Laid out against').inputValue()).toBe('time');
  await page.getByLabel('A file').setInputFiles({
    name: 'gate.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('speed [km/h];pitch;throttle\n0;90;100\n3600;45;90\n'),
  });
  await page.getByText(/^Read from gate\.csv\./).waitFor();
  expect(await rows(page)).toEqual(['0|90|100|', '1000|45|90|']);
  await context.close();
});

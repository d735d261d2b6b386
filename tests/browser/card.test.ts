import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { card, give, log } from './giveFiles.ts';
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

const form = (page: Page) => page.getByRole('form', { name: 'Mission card as a form' });
const text = (page: Page) => page.getByRole('textbox', { name: /^The card as text/ });
const check = (page: Page) => page.getByRole('region', { name: 'Check' });

async function cardOf(page: Page): Promise<unknown> {
  return JSON.parse(await text(page).inputValue());
}

test('a card is written from scratch by keyboard alone and saved as the file that a log is reviewed with', async () => {
  const { page, context, complaints, strays } = await openPage(browser, `${served.address}#/card`);
  await form(page).getByLabel('Mission', { exact: true }).focus();
  const type = async (value: string) => {
    await page.keyboard.type(value);
    await page.keyboard.press('Tab');
  };
  await type('Low Lantern');
  // World, then target: choices by their first letters, as a list is used by keyboard.
  await type('Mars');
  await type('an orbit');
  for (const value of ['250', '250']) await type(value);
  for (const field of ['Met within', 'Inclination', 'Which way it lies']) {
    expect(
      await page.evaluate(() => document.activeElement?.closest('.entry, details')?.textContent),
    ).toContain(field);
    await page.keyboard.press('Tab');
  }
  for (const value of ['4.5', '90', '', '', 'Fairlead', '900']) await type(value);
  await page.keyboard.press('Tab'); // over the button that removes the stage
  for (const value of ['ascent', '8 000', '1,100', '160 kN', '330']) await type(value);
  expect(await cardOf(page)).toEqual({
    mission: 'Low Lantern',
    world: 'mars',
    site: { latitude_deg: 4.5, launchAzimuth_deg: 90 },
    target: { kind: 'orbit', apoapsisAltitude_m: 250_000, periapsisAltitude_m: 250_000 },
    vehicle: {
      name: 'Fairlead',
      payload_kg: 900,
      stages: [
        {
          name: 'ascent',
          propellantMass_kg: 8000,
          dryMass_kg: 1100,
          thrustVacuum_N: 160_000,
          ispVacuum_s: 330,
        },
      ],
    },
  });
  await check(page)
    .getByText(/The card is right/)
    .waitFor();
  await check(page)
    .getByText(/Vehicle: Fairlead, 1 stage, payload 900\skg/)
    .waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save new.mission.json' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('new.mission.json');
  expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toEqual(await cardOf(page));
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

test('form and text are one card: each follows the other', async () => {
  const { page, context } = await openPage(browser, `${served.address}#/card`);
  await form(page).getByLabel('Payload').fill('1200');
  expect(await cardOf(page)).toEqual({ vehicle: { payload_kg: 1200, stages: [{}] } });
  await text(page).fill(
    '{ "vehicle": { "payload_kg": 700, "stages": [{ "name": "only" }, { "name": "upper" }] } }',
  );
  expect(await form(page).getByLabel('Payload').inputValue()).toBe('700');
  await form(page).getByRole('group', { name: 'Stage 2, upper' }).waitFor();
  // A text that is no card yet: the form waits, and the line is named.
  await text(page).fill('{\n  "vehicle": {\n    "payload_kg": x\n  }\n}');
  await page.getByRole('button', { name: 'Go to line 3' }).click();
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('TEXTAREA');
  expect(await form(page).getByLabel('Payload').isDisabled()).toBe(true);
  await text(page).fill('{ "vehicle": { "payload_kg": 650 } }');
  expect(await form(page).getByLabel('Payload').inputValue()).toBe('650');
  await context.close();
});

test('what the reader does not accept is said at its field', async () => {
  const { page, context } = await openPage(browser, `${served.address}#/card`);
  await form(page).getByLabel('Latitude').fill('95');
  await form(page).getByLabel('Payload').fill('heavy');
  const fault = (label: string) => form(page).getByLabel(label);
  await expect.poll(() => fault('Latitude').getAttribute('aria-invalid')).toBe('true');
  await form(page)
    .getByText(/site\.latitude_deg = 95.*from -90 to 90/)
    .waitFor();
  await form(page)
    .getByText(/payload_kg = "heavy".*a number/)
    .waitFor();
  await check(page).getByText('2 values have to be mended.').waitFor();
  await form(page).getByLabel('Latitude').fill('28.5');
  await form(page).getByLabel('Payload').fill('900');
  await check(page)
    .getByText(/The card is right/)
    .waitFor();
  expect(await fault('Latitude').getAttribute('aria-invalid')).toBeNull();
  await context.close();
});

test('stages are added, put in another order and removed; boosters and parts too', async () => {
  const { page, context } = await openPage(browser, `${served.address}#/card`);
  const f = form(page);
  await f.getByRole('group', { name: 'Stage 1' }).getByLabel('Name').fill('lower');
  await f.getByRole('button', { name: 'Add a stage' }).click();
  // The reader stands in the new stage.
  await f.getByRole('group', { name: 'Stage 2' }).locator('input:focus').waitFor();
  await page.keyboard.type('upper');
  await f.getByRole('button', { name: 'Earlier Stage 2, upper' }).click();
  await f.getByRole('group', { name: 'Stage 1, upper' }).waitFor();
  await f.getByRole('button', { name: 'Later Stage 1, upper' }).click();
  await f.getByRole('group', { name: 'Stage 1, lower' }).getByText('Boosters beside this stage').click();
  // The focus goes to a new member's first entry with the next frame: a later entry is written after that.
  const standsIn = (name: string) =>
    f.getByRole('group', { name }).locator('input:focus').first().waitFor({ state: 'visible' });
  await f.getByRole('button', { name: 'Add a booster' }).first().click();
  await standsIn('Booster 1');
  await f.getByRole('group', { name: 'Booster 1' }).getByLabel('How many').fill('2');
  await f.getByText('Parts thrown off on the way').click();
  await f.getByRole('button', { name: 'Add a part' }).click();
  await standsIn('Part 1');
  await f.getByRole('group', { name: 'Part 1' }).getByLabel('Mass').fill('350');
  expect(await cardOf(page)).toEqual({
    vehicle: {
      stages: [{ name: 'lower', boosters: [{ count: 2 }] }, { name: 'upper' }],
      jettisons: [{ mass_kg: 350 }],
    },
  });
  await f.getByRole('button', { name: 'Remove Stage 2, upper' }).click();
  expect(await f.getByRole('group', { name: /^Stage/ }).count()).toBe(1);
  await context.close();
});

test('a world of its own, with its air', async () => {
  const { page, context } = await openPage(browser, `${served.address}#/card`);
  const f = form(page);
  await f.getByRole('combobox', { name: 'World' }).selectOption('own');
  await f.getByLabel('Name').first().fill('Threnby');
  await f.getByLabel('Radius km', { exact: true }).fill('1,200');
  await f.getByLabel('Surface gravity').fill('1.9');
  await f.getByRole('combobox', { name: 'Air' }).selectOption('none');
  await check(page)
    .getByText(/World: Threnby, radius 1,200\skm.*no air/)
    .waitFor();
  expect(await cardOf(page)).toMatchObject({
    world: { name: 'Threnby', radius_m: 1_200_000, surfaceGravity_m_s2: 1.9, atmosphere: null },
  });
  await context.close();
});

test('the open flight is reviewed with the card, and the logbook keeps it', async () => {
  const { page, context } = await openPage(browser, served.address);
  await give(page, log('dusk.csv'), card('dusk.mission.json'));
  await reviewStands(page);
  await page.getByRole('link', { name: 'Mission card' }).click();
  const apply = page.getByRole('button', { name: 'Review the flight with it' });
  expect(await apply.isDisabled()).toBe(true);
  await form(page).getByLabel('Apoapsis altitude').fill('170');
  await form(page).getByLabel('Periapsis altitude').fill('170');
  await apply.click();
  await page.getByRole('link', { name: 'Review' }).click();
  await page
    .getByText(/orbit 170 × 170 km/)
    .first()
    .waitFor();
  await page.reload();
  await page
    .getByText(/orbit 170 × 170 km/)
    .first()
    .waitFor();
  await page.getByRole('link', { name: 'Mission card' }).click();
  expect(await form(page).getByLabel('Apoapsis altitude').inputValue()).toBe('170');
  await context.close();
});

test('the vehicle from the log stands beside the card, and its values go into it', async () => {
  const address = `${served.address}#/card?flight=sample:${shortFlight().id}`;
  const { page, context } = await openPage(browser, address);
  const vehicle = page.getByRole('region', { name: 'Vehicle from the log' });
  await vehicle.getByRole('rowheader', { name: 'lower: Isp' }).waitFor();
  await vehicle.getByRole('img', { name: /^Residual/ }).waitFor();
  const stage = form(page).getByRole('group', { name: 'Stage 1, lower' });
  await stage.getByLabel('Isp in vacuum').fill('290');
  await vehicle.getByRole('button', { name: 'Take identified values into the card' }).click();
  expect(Number(await stage.getByLabel('Isp in vacuum').inputValue())).toBeCloseTo(285, 0);
  await page.getByRole('button', { name: 'Take the changes back' }).click();
  expect(await stage.getByLabel('Isp in vacuum').inputValue()).toBe('285');
  await context.close();
});

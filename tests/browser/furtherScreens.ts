import type { Browser } from 'playwright-core';
import { type Look, openPage, type Watched } from './openPage.ts';
import { samples, shortFlight } from './sampleList.ts';

export const furtherScreens = ['plan', 'plan-editor', 'attempts', 'way-down'] as const;
export type FurtherScreen = (typeof furtherScreens)[number];

/** Five attempts each by three call signs. */
export const ladder = samples.filter((s) => s.id.startsWith('ladder-')).map((s) => `sample:${s.id}`);

/** A flight that was flown down to the ground. */
const homeward = 'sample:homeward-tansy-1';

/** Waits until nothing is being worked on. */
export async function atRest({ page }: Watched): Promise<void> {
  await page.locator('.announcements .working').waitFor({ state: 'detached' });
}

/** Opens the short flight's plan screen, which has no plan yet. */
export async function openPlanScreen(browser: Browser, address: string, look: Look = {}): Promise<Watched> {
  const watched = await openPage(browser, `${address}#/plan?flight=sample:${shortFlight().id}`, look);
  await watched.page.getByRole('heading', { level: 1, name: 'This flight has no plan' }).waitFor();
  await atRest(watched);
  return watched;
}

/** Opens the plan editor on the short flight, with rows of which two have faults. */
async function openEditor(browser: Browser, address: string, look: Look): Promise<Watched> {
  const watched = await openPage(browser, `${address}#/plan-editor?flight=sample:${shortFlight().id}`, look);
  const { page } = watched;
  await page.getByRole('heading', { level: 1, name: 'A plan for' }).waitFor();
  await atRest(watched);
  await page.getByLabel('time, row 1').waitFor();
  await page.getByRole('button', { name: 'A gravity turn (invented)' }).click();
  await page.getByText('The plan is right.').waitFor();
  await page.getByLabel('pitch, row 4').fill('steep');
  await page.getByLabel('event, row 6').fill('cutof (lower)');
  await page.getByText('2 cells have to be mended').waitFor();
  return watched;
}

/** Searches the best ascent for a plan and waits for what it shows. */
export async function searchBest(watched: Watched): Promise<void> {
  await watched.page.getByRole('button', { name: 'Search the best ascent' }).click();
  await watched.page.getByRole('region', { name: 'What made the difference' }).waitFor();
  await atRest(watched);
}

/** Opens one of the screens with all that it can show. */
export async function openFurther(
  browser: Browser,
  address: string,
  screen: FurtherScreen,
  look: Look = {},
): Promise<Watched> {
  if (screen === 'plan') {
    const watched = await openPlanScreen(browser, address, look);
    await searchBest(watched);
    return watched;
  }
  if (screen === 'plan-editor') return openEditor(browser, address, look);
  if (screen === 'attempts') {
    const hash = `#/attempts?flights=${encodeURIComponent(ladder.join(','))}`;
    const watched = await openPage(browser, `${address}${hash}`, look);
    await watched.page
      .getByRole('region', { name: 'Best phases flown one after another', exact: true })
      .waitFor();
    return watched;
  }
  const watched = await openPage(browser, `${address}#/way-down?flight=${homeward}`, look);
  await watched.page.getByRole('region', { name: 'Burns in orbit', exact: true }).waitFor();
  await atRest(watched);
  return watched;
}

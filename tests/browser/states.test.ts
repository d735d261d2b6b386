import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { furtherScreens, openFurther } from './furtherScreens.ts';
import { dropOn, give, log } from './giveFiles.ts';
import { bothThemesHold, fits, picturesFit } from './looks.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
import { shortFlight } from './sampleList.ts';
import { type ServedPage, servePage } from './servePage.ts';

/** What the screens look like while something is explained, asked, wrong or not there: as faultless as at rest. */
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

const flight = `flight=sample:${shortFlight().id}`;
const broken = { name: 'broken.csv', text: 'colour,taste\nred,sweet\nblue,sour\n' };
const nameless = () => ({
  name: 'odd.csv',
  text: log('x').text.replace(/^.*\n/, 'one,two,three,four,five,six\n'),
});
const cardless = () => ({ name: 'alone.csv', text: log('x').text });

interface State {
  readonly hash: string;
  readonly come: (page: Page) => Promise<unknown>;
}

const states: Readonly<Record<string, State>> = {
  guide: {
    hash: '',
    come: async (page) => {
      await page.getByRole('button', { name: 'Read a first review with a guide' }).click();
      await page.getByRole('complementary', { name: 'Guided first review' }).getByText('1 of 6').waitFor();
      await page.getByRole('button', { name: 'Next' }).click();
      await page.getByText('2 of 6').waitFor();
    },
  },
  terms: {
    hash: `#/review?${flight}`,
    come: async (page) => {
      await reviewStands(page);
      await page.getByRole('button', { name: 'Terms of the ledger' }).click();
      await page.getByRole('dialog', { name: 'Terms of the ledger' }).waitFor();
    },
  },
  'wrong-file': {
    hash: `#/review?${flight}`,
    come: async (page) => {
      await reviewStands(page);
      await dropOn(page, broken);
      await page.getByRole('alert').getByText('broken.csv').waitFor();
    },
  },
  'wrong-files': {
    hash: '#/logbook',
    come: async (page) => {
      await dropOn(page, broken, { name: 'shopping.txt', text: 'bread\n' });
      await page.getByRole('alert').getByText('shopping.txt').waitFor();
    },
  },
  'columns-to-say': {
    hash: '',
    come: async (page) => {
      await give(page, nameless());
      await page.getByRole('button', { name: 'Say which columns they are' }).click();
      await page.getByRole('heading', { name: /^Say which columns of odd\.csv/ }).waitFor();
      // What is wrong stands once.
      expect(await page.getByRole('alert').textContent()).toBe('');
    },
  },
  'no-card': {
    hash: '',
    come: async (page) => {
      await give(page, cardless());
      await reviewStands(page);
      await page.getByText(/In place of the margin/).waitFor();
    },
  },
  'card-faults': {
    hash: `#/card?${flight}`,
    come: async (page) => {
      await page.getByRole('heading', { level: 1, name: /Mission card of/ }).waitFor();
      const form = page.getByRole('form', { name: 'Mission card as a form' });
      await form.getByLabel('Latitude').fill('95');
      await form.getByLabel('Payload').fill('heavy');
      await page.getByText('2 values have to be mended.').waitFor();
    },
  },
  'card-text-broken': {
    hash: '#/card',
    come: async (page) => {
      await page.getByRole('textbox', { name: /^The card as text/ }).fill('{\n  "vehicle": x\n}');
      await page.getByRole('button', { name: 'Go to line 2' }).waitFor();
    },
  },
  'plan-editor': {
    hash: `#/plan-editor?${flight}`,
    come: (page) => page.getByRole('heading', { level: 1 }).waitFor(),
  },
};

describe.each(Object.entries(states))('%s', (name, { hash, come }) => {
  test.each([390, 1280])('at %i px, in both themes: no fault that axe knows, nothing cut', async (width) => {
    const watched = await openPage(browser, `${served.address}${hash}`, {
      width,
      height: width < 600 ? 844 : 800,
      touch: width < 600,
    });
    await come(watched.page);
    await picturesFit(watched, `state-${name}`, width, 'window');
    await bothThemesHold(watched.page, width);
    await watched.context.close();
  });
});

const plain = ['logbook', 'review', 'card', 'columns'] as const;

describe('on any screen', () => {
  test.each([...plain, ...furtherScreens])(
    '%s at 200 % zoom scrolls one way only, and nothing moves for those who asked for stillness',
    async (screen) => {
      // A window of 1280 px at 200 % lays out like one of 640.
      const look = { width: 640, height: 400 };
      const further = furtherScreens.find((s) => s === screen);
      const { page, context } =
        further === undefined
          ? await openPage(browser, `${served.address}#/${screen}?${flight}`, look)
          : await openFurther(browser, served.address, further, look);
      if (screen === 'review') await reviewStands(page);
      else await page.getByRole('heading', { level: 1 }).waitFor();
      await fits(page, 640);
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const moving = await page.evaluate(() =>
        [...document.querySelectorAll('body, body *')].flatMap((e) => {
          const { animationName, transitionDuration } = getComputedStyle(e);
          return animationName !== 'none' || /[1-9]/u.test(transitionDuration) ? [e.className] : [];
        }),
      );
      expect(moving).toEqual([]);
      await context.close();
    },
  );
});

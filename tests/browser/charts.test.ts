import { readFileSync } from 'node:fs';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
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

async function openReview(look: Parameters<typeof openPage>[2] = {}, id = shortFlight().id) {
  const watched = await openPage(browser, `${served.address}#/review?flight=sample:${id}`, look);
  await reviewStands(watched.page);
  return watched;
}

const slider = (page: Page) => page.getByRole('slider', { name: 'Time cursor of all charts' });

/** The stretch that the charts show, s. */
async function shown(page: Page): Promise<[number, number]> {
  const cursor = slider(page);
  return [
    Number(await cursor.getAttribute('aria-valuemin')),
    Number(await cursor.getAttribute('aria-valuemax')),
  ];
}

/** Plot area of a strip by its place, scrolled into view. */
async function plotBox(page: Page, place = 0) {
  const plot = page.locator('.strip .u-over').nth(place);
  await plot.scrollIntoViewIfNeeded();
  const box = await plot.boundingBox();
  if (box === null) throw new Error('the strip is not drawn');
  return box;
}

async function textOf(download: Download): Promise<string> {
  return readFileSync(await download.path(), 'utf8');
}

describe('working with the charts', () => {
  test('the wheel scrolls the page by itself, zooms with Ctrl, and zooms once the chart was pressed', async () => {
    const { page, context, complaints } = await openReview();
    const whole = await shown(page);
    const box = await plotBox(page);
    await page.mouse.move(box.x + box.width / 2, box.y + 30);
    const before = await page.evaluate(() => scrollY);
    await page.mouse.wheel(0, 60);
    await page.waitForFunction((y) => scrollY > y, before);
    expect(await shown(page)).toEqual(whole);

    const again = await plotBox(page);
    await page.mouse.move(again.x + again.width / 2, again.y + 30);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -200);
    await page.keyboard.up('Control');
    await page.waitForURL(/from=.*to=/);
    const near = await shown(page);
    expect(near[1] - near[0]).toBeLessThan(0.8 * (whole[1] - whole[0]));

    await page.mouse.click(again.x + again.width / 2, again.y + 30);
    await page.mouse.wheel(0, -200);
    await page.waitForFunction(
      (length) => {
        const cursor = document.querySelector('[role=slider]');
        return (
          Number(cursor?.getAttribute('aria-valuemax')) - Number(cursor?.getAttribute('aria-valuemin')) <
          length
        );
      },
      0.9 * (near[1] - near[0]),
    );
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a double press shows the ascent again; Shift and drag move along', async () => {
    const { page, context } = await openReview();
    const whole = await shown(page);
    const box = await plotBox(page);
    const y = box.y + 30;
    await page.mouse.move(box.x + 0.3 * box.width, y);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.6 * box.width, y, { steps: 4 });
    await page.mouse.up();
    const near = await shown(page);
    await page.keyboard.down('Shift');
    await page.mouse.move(box.x + 0.6 * box.width, y);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.4 * box.width, y, { steps: 4 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    const moved = await shown(page);
    // A fifth of the width to the left: a fifth of the stretch later.
    expect(moved[0] - near[0]).toBeCloseTo(0.2 * (near[1] - near[0]), -1);
    expect(moved[1] - moved[0]).toBeCloseTo(near[1] - near[0], -1);
    await page.mouse.dblclick(box.x + 0.5 * box.width, y);
    expect(await shown(page)).toEqual(whole);
    await context.close();
  });

  test('two fingers zoom, one moves the cursor', async () => {
    const { page, context } = await openReview({ width: 390, height: 844, touch: true });
    const whole = await shown(page);
    const box = await plotBox(page);
    const y = box.y + 30;
    const touch = await context.newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...places: number[]) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: places.map((share, id) => ({ x: box.x + share * box.width, y, id })),
      });
    await send('touchStart', 0.5);
    await send('touchMove', 0.6);
    await page.locator('.strip-line b').first().waitFor();
    await send('touchEnd');
    await send('touchStart', 0.45, 0.55);
    for (const apart of [0.1, 0.15, 0.2, 0.25]) await send('touchMove', 0.5 - apart, 0.5 + apart);
    await send('touchEnd');
    await page.waitForURL(/from=.*to=/);
    const near = await shown(page);
    // From a tenth of the width apart to a half: a fifth of the stretch is left.
    expect((near[1] - near[0]) / (whole[1] - whole[0])).toBeGreaterThan(0.12);
    expect((near[1] - near[0]) / (whole[1] - whole[0])).toBeLessThan(0.35);
    await context.close();
  });

  test('one cursor: the reading stands in every strip, on the path and in the causes', async () => {
    const { page, context } = await openReview();
    const box = await plotBox(page, 2);
    await page.mouse.move(box.x + 0.2 * box.width, box.y + 20);
    expect(await page.locator('.strip').count()).toBe(
      await page
        .locator('.strip')
        .filter({ has: page.locator('.strip-line b') })
        .count(),
    );
    expect(await page.locator('.ribbon-key').textContent()).toContain('each second, at the cursor');
    expect(await page.locator('.path svg circle[r="5"]').count()).toBe(1);
    await page.mouse.move(5, 5);
    expect(await page.locator('.strip-line b').count()).toBe(0);
    await context.close();
  });

  test('keys move the cursor past the edge and the stretch goes along', async () => {
    const { page, context } = await openReview();
    await slider(page).focus();
    await page.keyboard.press('+');
    const near = await shown(page);
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowRight');
    const moved = await shown(page);
    expect(moved[0]).toBeGreaterThan(near[0]);
    expect(moved[1]).toBeGreaterThan(near[1]);
    await page.keyboard.press('0');
    expect(page.url()).not.toMatch(/from=/);
    await context.close();
  });

  test('a strip is drawn by the logarithm when asked, and the address keeps it', async () => {
    const { page, context, complaints } = await openReview();
    const pressure = page.locator('.strip').filter({ hasText: 'Dynamic pressure' });
    await pressure.getByText('options').click();
    await pressure.getByRole('checkbox', { name: 'logarithmic Dynamic pressure' }).check();
    expect(page.url()).toMatch(/log=dynamicPressure_Pa/);
    await page.reload();
    await reviewStands(page);
    await pressure.getByText('options').click();
    expect(await pressure.getByRole('checkbox').isChecked()).toBe(true);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

test('another flight stands behind the curves, and the address keeps which', async () => {
  const { page, context, complaints, strays } = await openReview();
  const other = page.getByRole('combobox', { name: 'Behind the curves' });
  const title = (await other.getByRole('option').nth(1).textContent()) ?? '';
  await other.selectOption({ label: title });
  const named = page.locator('.hero svg text').getByText(title, { exact: true });
  await named.waitFor();
  await page
    .getByRole('heading', { name: /^Strips/ })
    .getByText(title)
    .waitFor();
  expect(page.url()).toMatch(/behind=/);
  await page.reload();
  await reviewStands(page);
  await named.waitFor();
  await other.selectOption({ label: 'no other flight' });
  await named.waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

describe('findings', () => {
  test('choosing one frames its stretch in every chart; choosing it again lets go', async () => {
    const { page, context } = await openReview();
    const whole = await shown(page);
    const findings = page.getByRole('region', { name: 'Findings' });
    const first = findings.getByRole('button').first();
    expect(await first.getAttribute('aria-pressed')).toBe('false');
    await first.focus();
    await page.keyboard.press('Enter');
    expect(await first.getAttribute('aria-pressed')).toBe('true');
    expect(page.url()).toMatch(/finding=0/);
    const framed = await shown(page);
    expect(framed).not.toEqual(whole);
    const told = /(−?[\d,]+) s to (−?[\d,]+) s/.exec(
      (await findings.getByRole('listitem').first().textContent()) ?? '',
    );
    const [from, to] = [told?.[1], told?.[2]].map((t) =>
      Number((t ?? '').replace('−', '-').replace(',', '')),
    );
    expect(framed[0]).toBeLessThanOrEqual((from ?? 0) + 1);
    expect(framed[1]).toBeGreaterThanOrEqual((to ?? 0) - 1);
    // Margin, causes and path shade it; strips are on canvas.
    expect(await page.locator('.hero svg [fill="var(--framed)"]').count()).toBe(2);
    expect(await page.locator('.path svg [fill="var(--framed)"]').count()).toBe(1);
    await page.keyboard.press('Enter');
    expect(page.url()).not.toMatch(/finding=/);
    await context.close();
  });
});

test.each(['light', 'dark'] as const)(
  'a chosen finding and open options keep what axe asks for, %s',
  async (theme) => {
    const { page, context } = await openReview({ theme });
    await page.getByRole('region', { name: 'Findings' }).getByRole('button').first().click();
    for (const options of await page.getByText('options').all()) await options.click();
    await slider(page).focus();
    await page.keyboard.press('End');
    expect(await axeViolations(page)).toEqual([]);
    await context.close();
  },
);

describe('pictures and tables', () => {
  test('path, orbit and causes are there by name', async () => {
    const { page, context } = await openReview();
    for (const name of [
      /^Path: altitude against downrange/,
      /^The conic .*target orbit$/,
      /^What the margin was lost to/,
    ]) {
      await page.getByRole('img', { name }).waitFor();
    }
    await context.close();
  });

  test('every chart has its table twin', async () => {
    const { page, context } = await openReview();
    for (const name of ['Margin as a table', 'Causes as a table', 'Strips as a table', 'Path as a table']) {
      await page.getByText(name).click();
      const table = page.getByRole('region', { name });
      await table.getByRole('row').nth(5).waitFor();
      expect(await table.getByRole('columnheader').count(), name).toBeGreaterThanOrEqual(3);
    }
    const orbit = page.getByRole('region', { name: 'Orbit at cutoff' });
    expect(await orbit.getByRole('row', { name: /^periapsis/ }).count()).toBe(1);
    await context.close();
  });

  test('charts are saved as SVG, PNG and CSV', async () => {
    const { page, context, complaints, strays } = await openReview();
    const save = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name, exact: true }).click(),
      ]);
      return download;
    };
    for (const name of ['Margin', 'Causes', 'Path', 'Orbit']) {
      const svg = await save(`Save ${name} as SVG`);
      expect(svg.suggestedFilename()).toBe(`bobstay-medlar-4-${name.toLowerCase()}.svg`);
      const text = await textOf(svg);
      expect(text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
      expect(text, 'every token is resolved').not.toContain('var(');
      expect(text).toContain('Medlar');
    }
    const png = await save('Save Margin as PNG');
    const bytes = readFileSync(await png.path());
    expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(bytes.readUInt32BE(16)).toBe(2 * (960 + 32));
    const csv = await textOf(await save('Save Margin as CSV'));
    expect(csv.split('\r\n')[0]).toBe(
      'time_s,spent_m_s,toGo_m_s,projectedTotal_m_s,margin_m_s,marginLow_m_s,marginHigh_m_s,toGoLow_m_s,toGoHigh_m_s',
    );
    const strip = page.locator('.strip').first();
    await strip.getByText('options').click();
    const drawn = await textOf(await save('Save Altitude and apoapsis as SVG'));
    expect(drawn).toContain('Altitude and apoapsis');
    const channels = await textOf(await save('Save all channels as CSV'));
    expect(channels.split('\r\n')[0]).toMatch(/^time_s,altitude_m,.*,event$/);
    expect(complaints).toEqual([]);
    expect(strays).toEqual([]);
    await context.close();
  });

  test('the report and the review document are saved', async () => {
    const { page, context, complaints } = await openReview();
    const take = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name, exact: true }).click(),
      ]);
      return textOf(download);
    };
    expect(await take('Save report')).toMatch(/^<!doctype html>/);
    expect(JSON.parse(await take('Save JSON')).schema).toBe('lossbook-review/1');
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('on paper', () => {
  test.each(['A4', 'Letter'])(
    '%s: a report with charts drawn for it, and the page as it was after',
    async (format) => {
      const { page, context, complaints } = await openReview({ theme: 'dark' });
      await page.evaluate(() => {
        addEventListener('beforeprint', () => {
          document.documentElement.dataset.seenOnPaper = JSON.stringify({
            theme: document.documentElement.dataset.theme,
            canvases: document.querySelectorAll('.strip canvas').length,
            strips: document.querySelectorAll('.strip svg').length,
            widths: [
              ...new Set(
                [...document.querySelectorAll('.hero svg, .strip svg')].map((s) => s.getAttribute('width')),
              ),
            ],
            notes: [...document.querySelectorAll<HTMLDetailsElement>('.provenance details')].every(
              (d) => d.open,
            ),
          });
        });
      });
      const paper = await page.pdf({ format });
      expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
      const seen = JSON.parse((await page.locator('html').getAttribute('data-seen-on-paper')) ?? '{}');
      expect(seen).toEqual({
        theme: 'light',
        canvases: 0,
        strips: expect.any(Number),
        widths: ['680'],
        notes: true,
      });
      expect(seen.strips).toBeGreaterThanOrEqual(8);
      expect(await page.locator('.strip canvas').count()).toBe(seen.strips);
      expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
      expect(await page.locator('.provenance details[open]').count()).toBe(0);
      // Five to seven pages, not a page a chart.
      const pages = paper.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
      expect(pages).toBeGreaterThanOrEqual(3);
      expect(pages).toBeLessThanOrEqual(7);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test('controls are not printed', async () => {
    const { page, context } = await openReview();
    await page.emulateMedia({ media: 'print' });
    for (const name of ['Print', 'Save report', 'Save Margin as PNG', 'Whole log']) {
      expect(await page.getByRole('button', { name, exact: true }).count(), name).toBe(0);
    }
    expect(await page.getByRole('navigation').count()).toBe(0);
    expect(await page.getByRole('cell', { name: 'derived' }).first().isVisible()).toBe(true);
    await context.close();
  });
});

describe('for everyone', () => {
  test('at 200 % of text and page nothing is cut and nothing scrolls sideways', async () => {
    // A window of 1280 px at 200 % lays out like one of 640.
    const { page, context } = await openReview({ width: 640, height: 400 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
    await context.close();
  });

  test('every control can be reached and seen by keyboard, in the order of the page', async () => {
    const { page, context } = await openReview();
    const reached: string[] = [];
    let top = -1;
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      const now = await page.evaluate(() => {
        const e = document.activeElement as HTMLElement;
        const box = e.getBoundingClientRect();
        const style = getComputedStyle(e);
        return {
          name: e.getAttribute('aria-label') ?? e.textContent ?? '',
          role: e.getAttribute('role') ?? e.tagName,
          main: e.closest('main') !== null,
          top: box.top + scrollY,
          outlined: style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2,
          shown: style.opacity !== '0' && box.width > 0,
        };
      });
      if (now.role === 'BODY') break;
      reached.push(now.name);
      expect(now.shown, `${now.name} is seen`).toBe(true);
      if (now.role !== 'INPUT') expect(now.outlined, `${now.name} shows its focus`).toBe(true);
      if (now.main) {
        expect(now.top, `${now.name} comes in order`).toBeGreaterThanOrEqual(top - 700);
        top = now.top;
      }
    }
    for (const name of [
      /^Print$/,
      /^gravity/,
      /^Time cursor/,
      /^Margin as a table/,
      /^options of Altitude/,
    ]) {
      expect(
        reached.some((r) => name.test(r)),
        String(name),
      ).toBe(true);
    }
    await context.close();
  });

  test('nothing moves by itself', async () => {
    const { page, context } = await openReview();
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll('main, main *')]
        .filter((e) => {
          const { animationName, transitionDuration } = getComputedStyle(e);
          return animationName !== 'none' || /[1-9]/.test(transitionDuration);
        })
        .map((e) => e.className),
    );
    expect(moving).toEqual([]);
    await context.close();
  });

  test('no section stands without content', async () => {
    const { page, context } = await openReview({}, 'thimble-teasel-1');
    const empty = await page.evaluate(() =>
      [...document.querySelectorAll('main section')]
        .filter((s) => s.querySelector('table, svg, canvas, li, p, button') === null)
        .map((s) => s.getAttribute('aria-label')),
    );
    expect(empty).toEqual([]);
    expect(await page.getByRole('heading', { name: /^Dynamic pressure/ }).count()).toBe(0);
    await context.close();
  });
});

/**
 * How long the page takes, in a headless browser, against an empty page in the same browser: until something is
 * painted, until a log that was chosen stands reviewed, and for each frame of a pan and a zoom. Needs the built page.
 */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { launch, openPage, reviewStands } from '../browser/openPage.ts';
import { servePage } from '../browser/servePage.ts';

const LOADS = 5;
const FRAMES = 120;

/** Frames of one movement. */
export interface Frames {
  /** Middle time between frames, and that of the slowest in twenty, ms on the clock. */
  readonly middle: number;
  readonly slow: number;
  /** Time of the page's main thread for each frame, ms by that thread's own clock. */
  readonly worked: number;
}

export interface PageTimes {
  /** Until the first paint, ms, the quickest of several. */
  readonly blankPaint: number;
  readonly firstPaint: number;
  /** From the choice of the file until its review stands, ms. */
  readonly imported: number;
  readonly blank: Frames;
  readonly pan: Frames;
  readonly zoom: Frames;
}

/** @param files a log, and its card */
export async function pageTimes(files: readonly string[]): Promise<PageTimes> {
  const blank = '<!doctype html><html lang="en"><title>Blank</title><p>Nothing.</p></html>';
  const served = await servePage({ '/blank.html': blank });
  const browser = await launch();
  try {
    let [blankPaint, firstPaint] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let k = 0; k < LOADS; k++) {
      blankPaint = Math.min(blankPaint, await paint(browser, `${served.address}blank.html`));
      firstPaint = Math.min(firstPaint, await paint(browser, served.address));
    }
    const empty = await openPage(browser, `${served.address}blank.html`);
    const blankFrames = await frames(empty.page, null);
    await empty.context.close();

    const { page } = await openPage(browser, `${served.address}#/logbook`);
    const chooser = page.getByLabel('Choose a flight log');
    await chooser.waitFor({ state: 'attached' });
    const began = performance.now();
    await chooser.setInputFiles([...files]);
    page.setDefaultTimeout(300_000);
    await reviewStands(page);
    const imported = performance.now() - began;
    const plot = page.locator('.strip .u-over').first();
    await plot.scrollIntoViewIfNeeded();
    // A third of the ascent is shown first, so that there is something to pan along.
    await frames(page, { deltaX: 0, deltaY: -2 }, false, 60);
    const pan = await frames(page, { deltaX: 4, deltaY: 0 });
    const zoom = await frames(page, { deltaX: 0, deltaY: -4 });
    return { blankPaint, firstPaint, imported, blank: blankFrames, pan, zoom };
  } finally {
    await browser.close();
    await served.stop();
  }
}

async function paint(browser: Browser, address: string): Promise<number> {
  const { page, context } = await openPage(browser, address);
  const entry = await page.waitForFunction(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime,
  );
  const time = (await entry.jsonValue()) ?? Number.NaN;
  await context.close();
  return time;
}

/** One way the wheel is turned. */
interface Turn {
  readonly deltaX: number;
  readonly deltaY: number;
}

/**
 * Turns the wheel over the first strip at every frame (or does nothing) and watches the frames. `back` turns it the
 * other way in the second half.
 */
async function frames(page: Page, wheel: Turn | null, back = true, count = FRAMES): Promise<Frames> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const before = await mainThread_s(session);
  const times = await page.evaluate(
    ([turn, turnsBack, wanted]) =>
      new Promise<number[]>((done) => {
        const area = document.querySelector('.strip .u-over');
        const box = area?.getBoundingClientRect();
        const at = { clientX: (box?.left ?? 0) + (box?.width ?? 0) / 2, clientY: (box?.top ?? 0) + 30 };
        const seen: number[] = [];
        const step = (now: number) => {
          seen.push(now);
          if (seen.length > wanted) return done(seen);
          if (turn !== null) {
            const way = turnsBack && seen.length > wanted / 2 ? -1 : 1;
            const [deltaX, deltaY] = [way * turn.deltaX, way * turn.deltaY];
            const how = { bubbles: true, cancelable: true, ctrlKey: deltaY !== 0 };
            area?.dispatchEvent(new WheelEvent('wheel', { ...at, ...how, deltaX, deltaY }));
          }
          requestAnimationFrame(step);
        };
        requestAnimationFrame(step);
      }),
    [wheel, back, count] as const,
  );
  const worked = ((await mainThread_s(session)) - before) * 1000;
  await session.detach();
  const gaps = times.slice(1).map((t, i) => t - (times[i] ?? t));
  gaps.sort((a, b) => a - b);
  const at = (share: number): number => gaps[Math.floor(share * (gaps.length - 1))] ?? Number.NaN;
  return { middle: at(0.5), slow: at(0.95), worked: worked / count };
}

async function mainThread_s(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find((m) => m.name === 'TaskDuration')?.value ?? Number.NaN;
}

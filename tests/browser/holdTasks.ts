import type { Browser, Page } from 'playwright-core';
import { type Look, openPage, type Watched } from './openPage.ts';

/**
 * What can be made to wait: a task of the page's workers by its name (`causes`: a review that seeks them), bytes of a
 * file read by the page itself, a log got from the book's database or put there, the opening of the book.
 */
export type Held = 'review' | 'causes' | 'planOfFlight' | 'bytes' | 'logs.get' | 'logs.put' | 'book.open';

interface Holding {
  kinds: readonly string[];
  readonly waiting: { readonly kind: string; readonly go: () => void }[];
  workers: number;
}

declare global {
  var holding: Holding;
}

/** Runs in the page before anything of its own does. */
function putHolds(kinds: readonly string[]): void {
  const holding: Holding = { kinds, waiting: [], workers: 0 };
  globalThis.holding = holding;
  // What the browser keeps of the page would stand in for its server, unseen by a test that makes that wait.
  Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined });
  const hold = (kind: string, go: () => void) => {
    if (holding.kinds.includes(kind)) holding.waiting.push({ kind, go });
    else go();
  };
  globalThis.Worker = class extends Worker {
    constructor(...given: ConstructorParameters<typeof Worker>) {
      super(...given);
      holding.workers += 1;
    }
    override postMessage(message: { task: string; request: { causes?: boolean } }, ...others: never[]): void {
      const kind = message.request.causes === true ? 'causes' : message.task;
      hold(kind, () => super.postMessage(message, ...others));
    }
  };
  const read = Blob.prototype.arrayBuffer;
  Blob.prototype.arrayBuffer = function () {
    // The first few bytes only tell what kind of file it is.
    return this.size < 16
      ? read.call(this)
      : new Promise((done) => hold('bytes', () => done(read.call(this))));
  };
  /** Holds what a request of the database answers, not the request. */
  const holdAnswer = <R extends IDBRequest>(request: R, kind: string): R => {
    const listen = request.addEventListener.bind(request);
    request.addEventListener = (type: string, act: unknown, how?: AddEventListenerOptions | boolean) =>
      listen(type, (event: Event) => hold(kind, () => (act as (e: Event) => void)(event)), how);
    return request;
  };
  const { get, put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.get = function (...given: Parameters<typeof get>) {
    const asked = get.apply(this, given);
    return this.name === 'logs' ? holdAnswer(asked, 'logs.get') : asked;
  };
  IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
    const asked = put.apply(this, given);
    return this.name === 'logs' ? holdAnswer(asked, 'logs.put') : asked;
  };
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...given: Parameters<typeof open>) {
    return holdAnswer(open.apply(this, given), 'book.open');
  };
}

/** Opens an address in a page whose work can be made to wait, so that a test decides what comes first. */
export async function openHolding(
  browser: Browser,
  address: string,
  kinds: readonly Held[] = [],
  look: Look = {},
): Promise<Watched> {
  const watched = await openPage(browser, 'about:blank', look);
  await watched.context.addInitScript(putHolds, kinds);
  await watched.page.goto(address);
  return watched;
}

/** From now on such work waits; none = nothing does. What waits already goes on waiting. */
export function hold(page: Page, ...kinds: readonly Held[]): Promise<void> {
  return page.evaluate((held) => {
    globalThis.holding.kinds = held;
  }, kinds);
}

/** Waits until some work of a kind does wait. */
export async function isHeld(page: Page, kind: Held): Promise<void> {
  await page.waitForFunction((of) => globalThis.holding.waiting.some((w) => w.kind === of), kind);
}

/** Lets everything go on, what waits and what comes. */
export function letGo(page: Page): Promise<void> {
  return page.evaluate(() => {
    globalThis.holding.kinds = [];
    for (const { go } of globalThis.holding.waiting.splice(0)) go();
  });
}

/** How many workers the page has started so far. */
export function workersOf(page: Page): Promise<number> {
  return page.evaluate(() => globalThis.holding.workers);
}

/** As following a link does. */
export async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
}

/** Flights of the logbook, as its screen lists them. */
export const titles = (page: Page): Promise<string[]> =>
  page.locator('.lines .flight-title').allTextContents();

/**
 * Keeps the page, whole, for work without its server, with the first sample flight and those that were opened. Only
 * files of the page are kept and answered; everything else goes to the server as if this worker were not there.
 */

/** Filled in by the build: the page's files, relative to it, and a name that changes with any of them. */
declare const __PAGE_FILES__: readonly string[];
declare const __PAGE_VERSION__: string;

interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface FetchEvent extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** The worker's global scope, typed by hand: the DOM's and the worker's type libraries cannot be used together. */
interface OfflineScope {
  readonly location: Location;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(name: 'install' | 'activate', act: (event: LastingEvent) => void): void;
  addEventListener(name: 'message', act: (event: MessageEvent<unknown>) => void): void;
  addEventListener(name: 'fetch', act: (event: FetchEvent) => void): void;
}

const scope = self as unknown as OfflineScope;
const prefix = 'lossbook-';
const version = `${prefix}${__PAGE_VERSION__}`;
const files = new Set(__PAGE_FILES__.map((f) => new URL(f, scope.location.href).href));

const samplesFolder = new URL('./samples/', scope.location.href).href;
const sampleList = `${samplesFolder}index.json`;
/** What comes with the page in any case; a sample flight only when somebody wants it. */
const own = [...files].filter((f) => !f.startsWith(samplesFolder) || f === sampleList);

/** `no-cache` asks the server whether the browser's own copy is still good. */
const fresh = (address: string): Request => new Request(address, { cache: 'no-cache' });

/** The files of the first sample flight of the list. */
async function firstSample(cache: Cache): Promise<string[]> {
  const list = (await (await cache.match(sampleList))?.json()) as
    | readonly Readonly<Partial<Record<'log' | 'card' | 'plan', string | null>>>[]
    | undefined;
  const { log, card, plan } = list?.[0] ?? {};
  return [log, card, plan]
    .filter((name) => typeof name === 'string')
    .map((name) => new URL(name, samplesFolder).href);
}

/** Sample flights that earlier versions of the page kept, because they were opened. */
async function openedBefore(): Promise<string[]> {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== version);
  const kept = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
  return kept.flat().map((request) => request.url);
}

async function keepAll(): Promise<void> {
  const cache = await caches.open(version);
  // All or nothing.
  await cache.addAll(own.map(fresh));
  const wanted = new Set([...(await firstSample(cache)), ...(await openedBefore())]);
  await cache.addAll([...wanted].filter((f) => files.has(f) && !own.includes(f)).map(fresh));
}

async function takeOver(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== version);
  await Promise.all(old.map((name) => caches.delete(name)));
  await scope.clients.claim();
}

async function answer(request: Request, address: string): Promise<Response> {
  const cache = await caches.open(version);
  const kept = await cache.match(address);
  if (kept !== undefined) return kept;
  const response = await fetch(request);
  // A disk without room for it is no trouble: the flight is read all the same.
  if (response.ok) await cache.put(address, response.clone()).catch(() => {});
  return response;
}

scope.addEventListener('install', (event) => event.waitUntil(keepAll()));
scope.addEventListener('activate', (event) => event.waitUntil(takeOver()));

// A newer version waits until the reader wants it: files of two versions never meet in one page.
scope.addEventListener('message', ({ data }) => {
  if (data === 'take over') void scope.skipWaiting();
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = request.url.replace(/[?#].*$/, '').replace(/\/index\.html$/, '/');
  if (request.method === 'GET' && files.has(address)) event.respondWith(answer(request, address));
});

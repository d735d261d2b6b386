/**
 * Keeps the page, whole, for work without its server. Only files of the page are kept and answered; everything else
 * goes to the server as if this worker were not there.
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

async function keepAll(): Promise<void> {
  const cache = await caches.open(version);
  // All or nothing. `no-cache` asks the server whether the browser's own copy is still good.
  await cache.addAll([...files].map((f) => new Request(f, { cache: 'no-cache' })));
}

async function takeOver(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== version);
  await Promise.all(old.map((name) => caches.delete(name)));
  await scope.clients.claim();
}

async function answer(request: Request, address: string): Promise<Response> {
  const kept = await (await caches.open(version)).match(address);
  return kept ?? fetch(request);
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

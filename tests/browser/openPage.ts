import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { findBrowser } from './findBrowser.ts';

/** Starts the browser with everything off that would call home. */
export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: findBrowser(),
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  readonly touch?: boolean;
}

/** A fresh page with a record of what it complained of and where it reached out to. */
export interface Watched {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Console errors and uncaught errors. */
  readonly complaints: readonly string[];
  /** Addresses of requests outside loopback. */
  readonly strays: readonly string[];
}

/** Opens an address in a context of its own. */
export async function openPage(browser: Browser, address: string, look: Look = {}): Promise<Watched> {
  const context = await browser.newContext({
    viewport: { width: look.width ?? 1280, height: look.height ?? 800 },
    colorScheme: look.theme ?? 'light',
    locale: 'en-US',
    hasTouch: look.touch ?? false,
  });
  const complaints: string[] = [];
  const strays: string[] = [];
  context.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (protocol !== 'data:' && protocol !== 'blob:' && hostname !== '127.0.0.1') strays.push(request.url());
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(address);
  return { page, context, complaints, strays };
}

/** Waits for a review to stand on the page. */
export async function reviewStands(page: Page): Promise<void> {
  await page.getByRole('region', { name: 'Where the delta-v went' }).waitFor();
}

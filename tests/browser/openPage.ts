import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { findBrowser } from './findBrowser.ts';

const quiet = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/**
 * Starts the browser with everything off that would call home.
 * @param more further switches
 */
export function launch(...more: readonly string[]): Promise<Browser> {
  return chromium.launch({ executablePath: findBrowser(), args: [...quiet, ...more] });
}

/** Starts the browser with a profile of its own on the disk, as a reader's is; it is taken away by `close`. */
export async function launchLasting(): Promise<BrowserContext> {
  const profile = mkdtempSync(join(tmpdir(), 'profile-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: findBrowser(),
    args: quiet,
    viewport: { width: 1280, height: 800 },
    locale: 'en-US',
  });
  // The browser may still be writing when it says that it is closed.
  context.once('close', () => {
    void rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 }).catch(() => {});
  });
  return context;
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
  context.setDefaultTimeout(60_000);
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

/** Waits for a review to stand whole on the page: its parts are drawn one after another, this one last. */
export async function reviewStands(page: Page): Promise<void> {
  await page.getByRole('region', { name: 'How the figures were come by', exact: true }).waitFor();
}

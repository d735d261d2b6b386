import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { samplePath, samples, shortFlight } from './sampleList.ts';

/** A file to hand to the page. */
export interface Given {
  readonly name: string;
  readonly text: string;
}

/** The log of the flight that ran dry, under another name. */
export function log(name: string): Given {
  return { name, text: readFileSync(samplePath(shortFlight().log), 'utf8') };
}

/** The mission card of the flight that ran dry, under another name. */
export function card(name: string): Given {
  return { name, text: readFileSync(samplePath(shortFlight().card ?? ''), 'utf8') };
}

/** Log and card of a sample flight as the files they are. */
export function filesOf(id: string): Given[] {
  const sample = samples.find((s) => s.id === id);
  if (sample === undefined) throw new Error(`sample-logs/index.json does not list ${id}`);
  const names = [sample.log, ...(sample.card === null ? [] : [sample.card])];
  return names.map((name) => ({ name, text: readFileSync(samplePath(name), 'utf8') }));
}

/** Picks files with the file picker. */
export async function give(page: Page, ...files: readonly Given[]): Promise<void> {
  await page
    .getByLabel('Choose a flight log')
    .setInputFiles(
      files.map(({ name, text }) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })),
    );
}

/** Drops files on the middle of the page. */
export async function dropOn(page: Page, ...files: readonly Given[]): Promise<void> {
  const data = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const { name, text } of list) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.dispatchEvent('main', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('main', 'drop', { dataTransfer: data });
}

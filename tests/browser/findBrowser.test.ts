import { chmodSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findBrowser } from './findBrowser.ts';

function folderWith(...names: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'browser-'));
  for (const name of names) {
    writeFileSync(join(folder, name), '#!/bin/sh\n');
    chmodSync(join(folder, name), 0o755);
  }
  return folder;
}

test('CHROMIUM_PATH goes before what is on PATH', () => {
  const told = join(folderWith('mine'), 'mine');
  expect(findBrowser({ CHROMIUM_PATH: told, PATH: folderWith('chromium') })).toBe(told);
});

test('on PATH the headless shell goes before chromium, chromium before google-chrome', () => {
  const all = folderWith('google-chrome', 'chromium', 'chromium-headless-shell');
  expect(findBrowser({ PATH: all })).toBe(join(all, 'chromium-headless-shell'));
  const two = folderWith('google-chrome', 'chromium');
  expect(findBrowser({ PATH: two })).toBe(join(two, 'chromium'));
});

test('a browser later on PATH under a better name is taken', () => {
  const first = folderWith('google-chrome');
  const second = folderWith('chromium-headless-shell');
  expect(findBrowser({ PATH: `${first}:${second}` })).toBe(join(second, 'chromium-headless-shell'));
});

test('without one the message is one line that says what to install', () => {
  expect(() => findBrowser({ PATH: folderWith() }, false)).toThrow(/^[^\n]*install[^\n]*chromium[^\n]*$/);
  expect(() => findBrowser({ CHROMIUM_PATH: '/nowhere/chromium' })).toThrow(
    /^CHROMIUM_PATH is \/nowhere[^\n]*$/,
  );
});

import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { card, dropOn, filesOf, give, log } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
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

const three = ['bobstay-medlar-4', 'bobstay-tansy-1', 'thimble-teasel-1'];

/** Titles of the book's flights, in the order shown. */
function titles(page: Page): Promise<string[]> {
  return page.locator('.lines .flight-title').allTextContents();
}

/** Waits until the book shows so many flights. */
async function bookOf(count: number, page: Page): Promise<void> {
  await expect.poll(() => titles(page), { timeout: 20_000 }).toHaveLength(count);
}

async function openBook() {
  const watched = await openPage(browser, `${served.address}#/logbook`);
  await watched.page.getByRole('heading', { level: 1 }).waitFor();
  return watched;
}

async function filledBook() {
  const watched = await openBook();
  await give(watched.page, ...three.flatMap(filesOf));
  await watched.page.getByText('3 flights came into the logbook').waitFor();
  await bookOf(3, watched.page);
  return watched;
}

test('several flights given together come into the book and are there after a reload', async () => {
  const { page, context, complaints, strays } = await filledBook();
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(
    '3 flights, 2 in their target orbit.',
  );
  const line = page.getByRole('listitem').filter({ hasText: 'bobstay-medlar-4' });
  expect(await line.first().textContent()).toMatch(
    /pilot Medlar.*vehicle Bobstay.*tanks dry.*margin −\d+ m\/s/,
  );
  await page.reload();
  await bookOf(3, page);
  await page.getByRole('button', { name: 'bobstay-tansy-1', exact: true }).click();
  await reviewStands(page);
  expect(page.url()).toMatch(/flight=book(%3A|:)[0-9a-f]{32}$/);
  await page.reload();
  await reviewStands(page);
  expect(complaints).toEqual([]);
  expect(strays).toEqual([]);
  await context.close();
});

test('files that are no logs are left aside with the reason, the others come in', async () => {
  const { page, context } = await openBook();
  await dropOn(page, ...filesOf('bobstay-tansy-1'), log('second.csv'), {
    name: 'notes.txt',
    text: 'hello\n',
  });
  await page.getByText('2 flights came into the logbook').waitFor();
  expect(await page.getByRole('alert').textContent()).toMatch(/One file was left aside:.*notes\.txt/);
  await context.close();
});

test('the same log given again is opened from the book, not kept twice', async () => {
  const { page, context } = await openBook();
  await give(page, ...filesOf('bobstay-tansy-1'));
  await reviewStands(page);
  await dropOn(page, ...filesOf('bobstay-tansy-1'));
  await page.getByText(/was in the logbook already/).waitFor();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await bookOf(1, page);
  await context.close();
});

test('rows that are pasted become a flight of the book', async () => {
  const { page, context } = await openBook();
  const [flown] = filesOf('bobstay-tansy-1');
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.setData('text/plain', text);
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
  }, flown?.text ?? '');
  await reviewStands(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await bookOf(1, page);
  expect((await titles(page))[0]).toMatch(/^pasted \d{4}-\d\d-\d\d/);
  await context.close();
});

test('a whole folder is taken in: cards by their logs, other files passed over', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'flights-'));
  for (const { name, text } of three.flatMap(filesOf)) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, 'picture.png'), 'no log');
  mkdirSync(join(folder, 'deeper'));
  writeFileSync(join(folder, 'deeper', 'fourth.csv'), log('fourth.csv').text);
  const { page, context } = await openBook();
  await page.getByLabel('a whole folder').setInputFiles(folder);
  await page.getByText('4 flights came into the logbook').waitFor();
  await bookOf(4, page);
  expect(await page.locator('.lines').first().textContent()).toContain('pilot Medlar');
  expect(await page.getByRole('alert').textContent()).toBe('');
  await context.close();
});

test('name, pilot, vehicle, tags and notes are kept; search finds them; sort and groups stand in the address', async () => {
  const { page, context } = await filledBook();
  await page.getByRole('button', { name: 'Edit what is noted of thimble-teasel-1' }).click();
  const form = page.getByRole('form', { name: 'About thimble-teasel-1' });
  await form.getByLabel('Name').fill('Low Lantern, evening');
  await form.getByLabel('Pilot').fill('Medlar');
  await form.getByLabel('Tags').fill('windy, second try');
  await form.getByLabel('Notes').fill('Turned <b>late</b>.\nTry again.');
  await form.getByRole('button', { name: 'Save' }).click();
  await form.waitFor({ state: 'detached' });
  await page.reload();
  await bookOf(3, page);
  expect(await page.getByText('Turned <b>late</b>.').textContent()).toBe('Turned <b>late</b>.\nTry again.');

  await page.getByLabel('Search').fill('WINDY lantern');
  expect(await titles(page)).toEqual(['Low Lantern, evening']);
  await page.getByText('1 of 3 flights').waitFor();
  await page.getByLabel('Search').fill('');

  await page.getByLabel('Sort by').selectOption('margin');
  expect((await titles(page)).at(-1)).toBe('bobstay-medlar-4');
  await page.getByLabel('Group by').selectOption('pilot');
  expect(page.url()).toMatch(/sort=margin.*group=pilot/);
  expect(await page.getByRole('heading', { level: 2 }).allTextContents()).toEqual([
    'Medlar 2',
    'Tansy 1',
    expect.stringMatching(/^Sample flights/),
  ]);
  await page.reload();
  await page.getByRole('list', { name: 'Flights of Medlar' }).waitFor();
  await context.close();
});

test('a deletion can be undone, at once and after a reload, and can be made final', async () => {
  const { page, context } = await filledBook();
  const remove = () => page.getByRole('button', { name: 'Delete bobstay-tansy-1' }).click();
  await remove();
  await page.getByText('bobstay-tansy-1 is deleted.').waitFor();
  await bookOf(2, page);
  // The focus comes after the paint.
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Undo');
  await page.keyboard.press('Enter');
  await bookOf(3, page);
  await remove();
  await bookOf(2, page);
  await page.reload();
  await page.getByRole('button', { name: 'Undo' }).click();
  await bookOf(3, page);
  await remove();
  await page.getByRole('button', { name: 'Delete for good' }).click();
  await page.getByText('bobstay-tansy-1 is deleted.').waitFor({ state: 'detached' });
  await page.reload();
  await bookOf(2, page);
  expect(await page.getByRole('button', { name: 'Undo' }).count()).toBe(0);
  await context.close();
});

/** The whole content of the browser's database, logs by their text. */
function databaseOf(page: Page): Promise<unknown> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((done, fail) => {
      const asked = indexedDB.open('lossbook');
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    });
    const all = (store: string, method: 'getAll' | 'getAllKeys') =>
      new Promise<unknown[]>((done) => {
        const asked = database.transaction(store).objectStore(store)[method]();
        asked.onsuccess = () => done(asked.result);
      });
    const logs = (await all('logs', 'getAll')) as Blob[];
    const content = {
      flights: await all('flights', 'getAll'),
      logKeys: await all('logs', 'getAllKeys'),
      logs: await Promise.all(logs.map((b) => b.text())),
      columns: await all('columns', 'getAll'),
    };
    database.close();
    return content;
  });
}

async function exported(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export the logbook' }).click(),
  ]);
  const name = download.suggestedFilename();
  expect(name).toMatch(/^lossbook \d{4}-\d\d-\d\d\.zip$/);
  return { name, mimeType: 'application/zip', buffer: readFileSync(await download.path()) };
}

test('the whole book goes out as one file and comes back without loss', async () => {
  const { page, context } = await filledBook();
  await page.getByRole('button', { name: 'Edit what is noted of bobstay-tansy-1' }).click();
  await page.getByLabel('Notes').fill('a note – with “marks” 🚀');
  await page.getByLabel('Tags').fill('keep, this');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('with “marks”').waitFor();
  const before = await databaseOf(page);
  const file = await exported(page);
  await context.close();

  const other = await openBook();
  await other.page.getByLabel('Choose a flight log').setInputFiles(file);
  await other.page.getByText(/3 flights came into the logbook from/).waitFor();
  await bookOf(3, other.page);
  expect(await databaseOf(other.page)).toEqual(before);
  await other.page.getByLabel('Choose a flight log').setInputFiles(file);
  await other.page.getByText(/0 flights came into the logbook.*3 were there already/).waitFor();
  expect(await databaseOf(other.page)).toEqual(before);
  await other.context.close();
});

test('a cut exported book is refused with words and changes nothing', async () => {
  const { page, context } = await filledBook();
  const { buffer: whole } = await exported(page);
  const before = await databaseOf(page);
  const cut = whole.subarray(0, whole.length / 2);
  await page
    .getByLabel('Choose a flight log')
    .setInputFiles({ name: 'cut.zip', mimeType: 'application/zip', buffer: cut });
  await page
    .getByRole('alert')
    .getByText(/no whole logbook/)
    .waitFor();
  expect(await databaseOf(page)).toEqual(before);
  await context.close();
});

test('two tabs show each other’s changes and none is lost', async () => {
  const { page: first, context } = await filledBook();
  const second = await context.newPage();
  await second.goto(`${served.address}#/logbook`);
  await bookOf(3, second);
  // Both change the same flight at once, and each a flight of its own.
  const edit = async (page: Page, title: string, field: string, value: string) => {
    await page.getByRole('button', { name: `Edit what is noted of ${title}` }).click();
    await page.getByRole('form').getByLabel(field).fill(value);
  };
  await edit(first, 'bobstay-tansy-1', 'Notes', 'from the first');
  await edit(second, 'thimble-teasel-1', 'Notes', 'from the second');
  await Promise.all([first, second].map((p) => p.getByRole('button', { name: 'Save' }).click()));
  for (const page of [first, second]) {
    await page.getByText('from the first').waitFor();
    await page.getByText('from the second').waitFor();
  }
  await Promise.all([
    dropOn(first, log('one.csv')),
    dropOn(second, log('two.csv')),
    second.waitForURL(/review/),
    first.waitForURL(/review/),
  ]);
  for (const page of [first, second]) {
    await page.getByRole('link', { name: 'Logbook' }).click();
    await bookOf(5, page);
  }
  await first.getByRole('button', { name: 'Delete two' }).click();
  await bookOf(4, second);
  await context.close();
});

/** Fails the way a private window of some browsers does. */
function forbidStorage(context: BrowserContext): Promise<unknown> {
  return context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('storage is forbidden', 'SecurityError');
    };
  });
}

test('a browser that forbids storage is told of, and the page goes on in memory', async () => {
  const { page, context } = await openBook();
  await forbidStorage(context);
  await page.reload();
  await page
    .getByRole('alert')
    .getByText(/does not let the page store anything/)
    .waitFor();
  await give(page, ...filesOf('bobstay-tansy-1'));
  await reviewStands(page);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByText('until this page is closed', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'bobstay-tansy-1', exact: true }).click();
  await reviewStands(page);
  await context.close();
});

test('a full disk is told of, what was there stays, and the flight is there until the page is closed', async () => {
  const { page, context } = await openBook();
  await give(page, ...filesOf('bobstay-tansy-1'));
  await reviewStands(page);
  // Ends the transaction of a log as the browser does when its space is used up: after all was handed over.
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      const asked = put.apply(this, given);
      if (this.name === 'logs') queueMicrotask(() => this.transaction.abort());
      return asked;
    };
  });
  await dropOn(page, log('late.csv'));
  await page
    .getByRole('alert')
    .getByText(/is full.*late lasts until this page is closed/)
    .waitFor();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await bookOf(2, page);
  await page.getByRole('button', { name: 'late', exact: true }).click();
  await reviewStands(page);
  expect(await databaseOf(page)).toMatchObject({ flights: [{ title: 'bobstay-tansy-1' }] });
  await page.goto(`${served.address}#/logbook`);
  await page.reload();
  await bookOf(1, page);
  expect(await titles(page)).toEqual(['bobstay-tansy-1']);
  await context.close();
});

test('a book of the first version is lifted to the present one', async () => {
  const { page, context } = await openPage(browser, `${served.address}samples/index.json`);
  await page.evaluate(async (text) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const asked = indexedDB.open('lossbook', 1);
      asked.onupgradeneeded = () => {
        asked.result.createObjectStore('flights', { keyPath: 'id' });
        asked.result.createObjectStore('logs');
      };
      asked.onsuccess = () => done(asked.result);
    });
    const change = database.transaction(['flights', 'logs'], 'readwrite');
    change.objectStore('flights').put({
      id: 'old',
      title: 'from long ago',
      logName: 'old.csv',
      logBytes: text.length,
      card: null,
      pilot: 'Teasel',
      vehicle: null,
      notes: 'kept',
      summary: {
        verdictCode: 'undetermined',
        verdict: '',
        margin_m_s: null,
        mission: null,
        world: 'Earth',
        vehicle: null,
        pilot: null,
        attempt: null,
        date: null,
      },
      addedAt: '2031-01-01T00:00:00.000Z',
      changedAt: '2031-01-01T00:00:00.000Z',
      deletedAt: null,
    });
    change.objectStore('logs').put(new Blob([text]), 'old');
    await new Promise((done) => {
      change.oncomplete = done;
    });
    database.close();
  }, log('x').text);
  await page.goto(`${served.address}#/logbook`);
  await bookOf(1, page);
  expect(await page.locator('.line').textContent()).toMatch(/from long ago.*Teasel.*kept/);
  await page.getByRole('button', { name: 'from long ago', exact: true }).click();
  await reviewStands(page);
  expect(await databaseOf(page)).toMatchObject({ flights: [{ part: 1, tags: [], plan: null }], columns: [] });
  await context.close();
});

test('a book that a later lossbook keeps is left alone and said', async () => {
  const { page, context } = await openPage(browser, `${served.address}samples/index.json`);
  await page.evaluate(
    () =>
      new Promise((done) => {
        const asked = indexedDB.open('lossbook', 99);
        asked.onsuccess = () => {
          asked.result.close();
          done(null);
        };
      }),
  );
  await page.goto(`${served.address}#/logbook`);
  await page
    .getByRole('alert')
    .getByText(/newer lossbook/)
    .waitFor();
  await page.getByRole('heading', { name: /^Sample flights/ }).waitFor();
  await context.close();
});

test('a card given to a flight of the book is kept with it', async () => {
  const { page, context } = await openBook();
  await give(page, log('evening.csv'));
  await reviewStands(page);
  await dropOn(page, card('other.mission.json'));
  await page.getByRole('link', { name: 'Logbook' }).click();
  await page.getByText('vehicle Bobstay').waitFor({ state: 'attached' });
  expect(await databaseOf(page)).toMatchObject({ flights: [{ card: { name: 'other.mission.json' } }] });
  await page.reload();
  await page.getByRole('button', { name: 'evening', exact: true }).click();
  await reviewStands(page);
  expect(await page.locator('.context').textContent()).toContain('Bobstay');
  await context.close();
});

test('column choices are remembered for logs with the same headers, in any order', async () => {
  const { page, context } = await openBook();
  // Heights in thousands of feet under a header that says nothing of it.
  const lines = log('x').text.trim().split('\n');
  const heads = (lines[0] ?? '').split(',');
  const at = heads.findIndex((h) => /alt/i.test(h));
  const odd = ['height', ...heads.filter((_, i) => i !== at)];
  const rows = lines.slice(1).map((line) => {
    const cells = line.split(',');
    const height = (Number(cells[at]) / 304.8).toFixed(6);
    return [height, ...cells.filter((_, i) => i !== at)].join(',');
  });
  await page.evaluate(async (headers) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const asked = indexedDB.open('lossbook');
      asked.onsuccess = () => done(asked.result);
    });
    const change = database.transaction('columns', 'readwrite');
    const key = headers
      .map((h) => h.trim().toLowerCase())
      .sort()
      .join('\n');
    change
      .objectStore('columns')
      .put({ headers, choices: [{ channel: 'altitude', column: 'height', unit: 'kft' }] }, key);
    await new Promise((done) => {
      change.oncomplete = done;
    });
    database.close();
  }, [...odd].reverse());
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await give(page, { name: 'odd.csv', text: [odd.join(','), ...rows].join('\n') }, card('odd.mission.json'));
  await reviewStands(page);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/^Not in orbit: 35\d/);
  await context.close();
});

test('when a later lossbook takes the book over in another tab, this one says so and goes on', async () => {
  const { page, context } = await openBook();
  await give(page, ...filesOf('bobstay-tansy-1'));
  await reviewStands(page);
  const other = await context.newPage();
  await other.goto(`${served.address}samples/index.json`);
  await other.evaluate(
    () =>
      new Promise((done) => {
        const asked = indexedDB.open('lossbook', 99);
        asked.onsuccess = done;
      }),
  );
  await page
    .getByRole('alert')
    .getByText(/newer lossbook and took the logbook over/)
    .waitFor();
  await page.getByRole('link', { name: 'Logbook' }).click();
  await dropOn(page, log('late.csv'));
  await page.waitForURL(/review/);
  await page.getByRole('link', { name: 'Logbook' }).click();
  await bookOf(2, page);
  await page.getByText('until this page is closed', { exact: true }).waitFor();
  await context.close();
});

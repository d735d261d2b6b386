import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, test } from 'vitest';
import { furtherScreens, openFurther } from './furtherScreens.ts';
import { filesOf, give } from './giveFiles.ts';
import { launch, openPage, reviewStands } from './openPage.ts';
import { servePage } from './servePage.ts';

/** A proxy that lets nothing through and writes down what was asked of it. */
async function watchingProxy() {
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url ?? '');
    response.writeHead(502).end();
  });
  server.on('connect', (request, socket) => {
    asked.push(request.url ?? '');
    socket.end('HTTP/1.1 502 Bad Gateway\r\n\r\n');
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const stop = () => {
    server.close();
    server.closeAllConnections();
  };
  return { asked, stop, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}

/** Ways by which a page can send something, each to an address that only a proxy could reach. */
function tryEverything(host: string): Promise<string[]> {
  const to = (way: string) => `http://${host}/${way}`;
  const settled = (work: Promise<unknown>) => Promise.race([work, new Promise((r) => setTimeout(r, 1500))]);
  const element = (tag: string, fields: Record<string, string>) => {
    const e = document.createElement(tag);
    for (const [name, value] of Object.entries(fields)) e.setAttribute(name, value);
    document.body.append(e);
  };
  const ways: Record<string, () => unknown> = {
    fetch: () => fetch(to('fetch'), { mode: 'no-cors' }).catch(() => {}),
    beacon: () => navigator.sendBeacon(to('beacon'), 'x'),
    request: () =>
      new Promise((done) => {
        const x = new XMLHttpRequest();
        x.onloadend = done;
        x.open('GET', to('request'));
        x.send();
      }),
    socket: () =>
      new Promise((done) => {
        new WebSocket(to('socket').replace('http', 'ws')).onerror = done;
      }),
    events: () =>
      new Promise((done) => {
        new EventSource(to('events')).onerror = done;
      }),
    image: () => {
      new Image().src = to('image');
    },
    style: () => element('link', { rel: 'stylesheet', href: to('style') }),
    background: () => element('div', { style: `background:url(${to('background')})` }),
    script: () => element('script', { src: to('script') }),
    frame: () => element('iframe', { src: to('frame') }),
    object: () => element('object', { data: to('object') }),
    video: () => element('video', { src: to('video') }),
    manifest: () => element('link', { rel: 'manifest', href: to('manifest') }),
    icon: () => element('link', { rel: 'icon', href: to('icon') }),
    form: () => {
      const form = document.createElement('form');
      form.action = to('form');
      form.method = 'post';
      form.target = '_self';
      document.body.append(form);
      form.submit();
    },
    worker: () => {
      try {
        new Worker(to('worker'));
      } catch {
        // Refused at once.
      }
    },
  };
  const all = Object.entries(ways);
  return Promise.all(
    all.map(async ([name, go]) => {
      try {
        await settled(Promise.resolve(go()));
      } catch {
        // Refused at once.
      }
      return name;
    }),
  );
}

test('no request leaves the page: neither by itself nor when a script in it tries', async () => {
  const proxy = await watchingProxy();
  const served = await servePage();
  const browser = await launch(`--proxy-server=${proxy.address}`);
  const { page, context, strays } = await openPage(browser, served.address);
  await give(page, ...filesOf('bobstay-medlar-4'));
  await reviewStands(page);
  for (const link of await page.getByRole('navigation', { name: 'Screens' }).getByRole('link').all()) {
    await link.click();
    await page.getByRole('heading', { level: 1 }).waitFor();
  }
  await page.getByRole('link', { name: 'Review' }).click();
  await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save report' }).click(),
  ]);
  expect(strays).toEqual([]);
  // With all that the further screens can work out: a best ascent, fifteen flights side by side, a way down.
  for (const screen of furtherScreens) {
    const further = await openFurther(browser, served.address, screen);
    expect(further.strays, screen).toEqual([]);
    expect(further.complaints, screen).toEqual([]);
    await further.context.close();
  }
  expect(proxy.asked, 'by itself').toEqual([]);

  const tried = await page.evaluate(tryEverything, 'lossbook-elsewhere.test');
  expect(tried.length).toBeGreaterThan(14);
  await page.waitForTimeout(500);
  expect(proxy.asked, 'on trying').toEqual([]);

  // The proxy does see what is not forbidden: a page without the policy.
  const bare = await context.newPage();
  await bare.goto(`${served.address}samples/index.json`);
  await bare.evaluate(() =>
    fetch('http://lossbook-elsewhere.test/seen', { mode: 'no-cors' }).catch(() => {}),
  );
  await expect.poll(() => proxy.asked).toEqual(['http://lossbook-elsewhere.test/seen']);
  await browser.close();
  await served.stop();
  proxy.stop();
});

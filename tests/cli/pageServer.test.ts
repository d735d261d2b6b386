import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, type RequestOptions, request, type Server } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pageServer } from '../../src/cli/pageServer.ts';

const root = mkdtempSync(join(tmpdir(), 'lossbook-page-'));
const page = join(root, 'page');
let server: Server;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(page, 'assets'), { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html>page');
  writeFileSync(join(page, 'assets', 'a.js'), 'export {}');
  writeFileSync(join(page, 'open.json'), '[]');
  writeFileSync(join(root, 'secret.txt'), 'secret');
  writeFileSync(join(root, 'flight.csv'), 'time,altitude\n0,0\n');
  writeFileSync(join(root, 'flight.mission.json'), '{}');
  server = await pageServer(page, [
    { name: 'flight.csv', log: join(root, 'flight.csv'), card: join(root, 'flight.mission.json') },
    { name: 'standard input', log: new TextEncoder().encode('piped'), card: null },
  ]);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  port = typeof address === 'object' && address !== null ? address.port : 0;
});

afterAll(async () => {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  rmSync(root, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

function ask(path: string, options: RequestOptions = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, ...options }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({
          status: answer.statusCode ?? 0,
          headers: answer.headers,
          text: Buffer.concat(parts).toString(),
        }),
      );
    });
    asked.on('error', reject).end();
  });
}

/** The status line that answers a request written by hand, byte for byte. */
function askRaw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.end(text));
    let answer = '';
    socket.on('data', (part) => {
      answer += part.toString();
    });
    socket.on('end', () => resolve(answer)).on('error', reject);
  });
}

describe('the page’s server', () => {
  test('serves the page with its types and guards', async () => {
    const { status, headers, text } = await ask('/');
    expect([status, text]).toEqual([200, '<!doctype html>page']);
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self';/);
    expect((await ask('/assets/a.js')).headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect((await ask('/index.html?theme=dark')).status).toBe(200);
  });

  test('lists the logs over the page’s own empty list, and serves them unstored', async () => {
    const list = await ask('/open.json');
    expect(JSON.parse(list.text)).toEqual([
      { name: 'flight.csv', log: '/open/0', card: '/open/0.card' },
      { name: 'standard input', log: '/open/1', card: null },
    ]);
    const log = await ask('/open/0');
    expect([log.text, log.headers['cache-control']]).toEqual(['time,altitude\n0,0\n', 'no-store']);
    expect((await ask('/open/0.card')).text).toBe('{}');
    expect((await ask('/open/1')).text).toBe('piped');
    expect((await ask('/open/1.card')).status).toBe(404);
    expect((await ask('/open/2')).status).toBe(404);
  });

  test('answers HEAD without a body and refuses to be written to', async () => {
    const head = await ask('/open/0', { method: 'HEAD' });
    expect([head.status, head.text, head.headers['content-length']]).toEqual([200, '', '18']);
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) {
      expect((await ask('/', { method })).status).toBe(405);
    }
  });

  test.each(['evil.example', 'evil.example:80', '127.0.0.1', 'localhost', '127.0.0.1:1', '0.0.0.0'])(
    'refuses the Host %j, as a rebound name would send it',
    async (host) => {
      const answer = await ask('/open/0', { headers: { host } });
      expect([answer.status, answer.text.includes('time')]).toEqual([403, false]);
    },
  );

  test('refuses a request without any Host', async () => {
    expect(await askRaw('GET / HTTP/1.0\r\n\r\n')).toMatch(/^HTTP\/1\.1 403 /);
    expect(await askRaw('GET / HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n')).toMatch(/^HTTP\/1\.1 403 /);
  });

  test('answers to localhost as well', async () => {
    expect((await ask('/', { headers: { host: `localhost:${port}` } })).status).toBe(200);
  });

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/..%5csecret.txt',
    '/assets/../../secret.txt',
    '//etc/passwd',
    '/open/../secret.txt',
    '/%00',
    '/%zz',
    '/assets',
    '/assets/',
    '/secret.txt',
  ])('finds nothing at %s', async (path) => {
    const answer = await askRaw(
      `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: close\r\n\r\n`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 404 /);
    expect(answer).not.toContain('secret\n');
  });

  test('a log that has gone since gives an error and no stack trace, and the server lives on', async () => {
    rmSync(join(root, 'flight.mission.json'));
    const gone = await ask('/open/0.card');
    expect([gone.status, gone.text]).toEqual([500, 'The file cannot be read any more.\n']);
    expect((await ask('/')).status).toBe(200);
  });
});

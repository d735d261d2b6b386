import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const folder = 'dist/page';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.csv': 'text/csv',
};

export interface ServedPage {
  /** Ends with a slash. */
  readonly address: string;
  readonly stop: () => Promise<void>;
}

/**
 * Serves the built page on a free loopback port, like any static host.
 * @param instead bodies that stand in for files, by path
 * @param port 0 = any that is free
 */
export async function servePage(
  instead: Readonly<Record<string, string>> = {},
  port = 0,
): Promise<ServedPage> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error(`There is no page in ${folder}: npm run build makes it.`);
  }
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://loopback').pathname));
    const file = path === '/' ? '/index.html' : path;
    try {
      const body = instead[file] ?? (await readFile(join(folder, file)));
      response.setHeader('content-type', types[extname(file)] ?? 'application/octet-stream');
      response.end(body);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

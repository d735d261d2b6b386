import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join } from 'node:path';

/** A log to offer to the page: its name, and where it and its card are. */
export interface OpenedLog {
  readonly name: string;
  readonly log: string | Uint8Array;
  readonly card: string | null;
}

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const securityHeaders = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
} as const;

type Served = { readonly type: string; readonly body: string | Uint8Array | { readonly file: string } };

/**
 * A server of the page in `pageFolder` and of the logs given, nothing else: every address is looked up in a list
 * made at the start, so that no path of a request ever reaches the file system. Requests whose Host header is not
 * this machine's own name and port are refused (they come from elsewhere by way of a rebound name).
 */
export async function pageServer(pageFolder: string, logs: readonly OpenedLog[]): Promise<Server> {
  const served = new Map([...(await pageFiles(pageFolder)), ...openedFiles(logs)]);
  return createServer((request, response) => {
    void answer(served, request, response).catch(() => {
      if (!response.headersSent) refuse(response, 500, 'The file cannot be read any more.');
      else response.destroy();
    });
  });
}

async function pageFiles(folder: string): Promise<Map<string, Served>> {
  const files = new Map<string, Served>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    // This server is at hand whenever the page is: nothing of it is to be kept for work without one.
    if (!entry.isFile() || entry.name === 'offline.js') continue;
    const file = join(entry.parentPath, entry.name);
    const path = file.slice(folder.length).replaceAll('\\', '/').replace(/^\/*/u, '/');
    files.set(path, { type: contentTypes[extname(file)] ?? 'application/octet-stream', body: { file } });
  }
  const index = files.get('/index.html');
  if (index !== undefined) files.set('/', index);
  return files;
}

function openedFiles(logs: readonly OpenedLog[]): Map<string, Served> {
  const list = logs.map(({ name, card }, i) => ({
    name,
    log: `/open/${i}`,
    card: card === null ? null : `/open/${i}.card`,
  }));
  const files = new Map<string, Served>([
    ['/open.json', { type: contentTypes['.json'] ?? '', body: JSON.stringify(list) }],
  ]);
  logs.forEach(({ log, card }, i) => {
    const body = typeof log === 'string' ? { file: log } : log;
    files.set(`/open/${i}`, { type: 'application/octet-stream', body });
    if (card !== null)
      files.set(`/open/${i}.card`, { type: contentTypes['.json'] ?? '', body: { file: card } });
  });
  return files;
}

async function answer(
  served: ReadonlyMap<string, Served>,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const port = request.socket.localPort;
  const host = request.headers.host;
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) {
    return refuse(response, 403, 'This address is for this machine only.');
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return refuse(response, 405, 'Only reading is possible.');
  }
  const path = (request.url ?? '/').split(/[?#]/u)[0] ?? '/';
  const found = served.get(decoded(path));
  if (found === undefined) return refuse(response, 404, 'There is nothing at this address.');
  const { body, type } = found;
  const size =
    body instanceof Uint8Array
      ? body.length
      : typeof body === 'string'
        ? Buffer.byteLength(body)
        : (await stat(body.file)).size;
  response.writeHead(200, {
    ...securityHeaders,
    'Content-Type': type,
    'Content-Length': size,
    'Cache-Control': path.startsWith('/open') ? 'no-store' : 'no-cache',
  });
  if (request.method === 'HEAD') response.end();
  else if (typeof body === 'string' || body instanceof Uint8Array) response.end(body);
  else
    createReadStream(body.file)
      .on('error', () => response.destroy())
      .pipe(response);
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return '';
  }
}

function refuse(response: ServerResponse, status: number, reason: string): void {
  response.writeHead(status, {
    ...securityHeaders,
    'Content-Type': 'text/plain; charset=utf-8',
    'Cache-Control': 'no-store',
  });
  response.end(`${reason}\n`);
}

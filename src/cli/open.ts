import type { Server } from 'node:http';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { LossbookError } from '../errors.ts';
import { cardBeside, errorCode, mustBeFile, readInput } from './inputFiles.ts';
import { type OpenedLog, pageServer } from './pageServer.ts';
import type { Asked } from './parseCommand.ts';
import type { Terminal } from './terminal.ts';

/** The same for every run, since the browser keeps the logbook by address and port. */
const usualPort = 5741;

/** `lossbook open`: serves the page and the logs named until it is interrupted. */
export async function open(asked: Asked, terminal: Terminal): Promise<number> {
  const port = portNumber(asked.value('port'));
  const logs: OpenedLog[] = [];
  for (const path of asked.files) logs.push(await opened(path, terminal));
  const server = await servePage(logs);
  await listen(server, port);
  const address = server.address();
  const taken = typeof address === 'object' && address !== null ? address.port : port;
  const ended = interrupted(server);
  terminal.result(`http://127.0.0.1:${taken}/\n`);
  terminal.note('the page is served to this machine alone; Ctrl-C ends it.');
  await ended;
  return 0;
}

function portNumber(text: string | undefined): number {
  if (text === undefined) return usualPort;
  if (/^\d{1,5}$/u.test(text) && Number(text) <= 65_535) return Number(text);
  throw new LossbookError('usage', {
    reason: `--port ${text} is not a number from 0 to 65535`,
    command: 'open',
  });
}

async function opened(path: string, terminal: Terminal): Promise<OpenedLog> {
  if (path === '-') {
    const { name, bytes } = await readInput(path);
    return { name, log: bytes, card: null };
  }
  await mustBeFile(path);
  const card = await cardBeside(path);
  if (card !== null) terminal.note(`${path}: its mission card ${basename(card)} lies beside it and is taken`);
  return { name: basename(path), log: path, card };
}

/** The page lies beside the bundled command: dist/cli/lossbook.js and dist/page/. */
async function servePage(logs: readonly OpenedLog[]): Promise<Server> {
  const folder = fileURLToPath(new URL('../page/', import.meta.url));
  try {
    return await pageServer(folder, logs);
  } catch (error) {
    throw new LossbookError('page-missing', { reason: errorCode(error) }, { file: folder });
  }
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error) => {
      const code = errorCode(error);
      const reason = code === 'EADDRINUSE' ? 'another program has it' : code;
      reject(new LossbookError('port-taken', { port, reason }));
    });
    server.listen(port, '127.0.0.1', resolve);
  });
}

/** Resolves when the user ends the program and the server has let go of its port. */
function interrupted(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      server.close(() => resolve());
      server.closeAllConnections();
    };
    process.once('SIGINT', end);
    process.once('SIGTERM', end);
  });
}

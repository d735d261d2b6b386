import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const command = resolve(import.meta.dirname, '../../dist/cli/lossbook.js');
const folder = mkdtempSync(join(tmpdir(), 'lossbook-open-'));
writeFileSync(join(folder, 'a.csv'), 'time_s,altitude_m,speed_m_s\n0,0,0\n');
writeFileSync(join(folder, 'a.mission.json'), '{}');

const started: ChildProcess[] = [];
afterAll(() => {
  for (const child of started) child.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

/** Starts `lossbook open` and waits for the address that it prints, or for its end. */
function open(args: readonly string[]) {
  const child = spawn(process.execPath, [command, 'open', ...args], { cwd: folder });
  started.push(child);
  let notes = '';
  child.stderr.on('data', (part: Buffer) => {
    notes += part.toString();
  });
  const ended = new Promise<number | null>((done) => child.on('close', (code) => done(code)));
  const address = new Promise<string>((done) => {
    child.stdout.once('data', (part: Buffer) => done(part.toString().trim()));
    child.on('close', () => done(''));
  });
  return { child, ended, address, notes: () => notes };
}

test('serves the page and the logs until Ctrl-C', async () => {
  const { child, ended, address, notes } = open(['a.csv', '--port', '0']);
  const url = await address;
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const page = await fetch(url);
  expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
  const list: unknown = await (await fetch(`${url}open.json`)).json();
  expect(list).toEqual([{ name: 'a.csv', log: '/open/0', card: '/open/0.card' }]);
  expect(await (await fetch(`${url}open/0`)).text()).toContain('altitude_m');
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  expect(notes()).toMatch(/its mission card a\.mission\.json lies beside it/);
});

test('without logs the list of opened logs is empty', async () => {
  const { child, ended, address } = open(['--port=0']);
  expect(await (await fetch(`${await address}open.json`)).text()).toBe('[]');
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
});

test('a port that is taken is told, with the way out', async () => {
  const first = open(['--port', '0']);
  const port = new URL(await first.address).port;
  const second = open(['--port', port]);
  expect(await second.ended).toBe(2);
  expect(second.notes()).toMatch(
    new RegExp(
      `^lossbook: port ${port} of 127\\.0\\.0\\.1 cannot be used: another program has it; .*--port \\d+\\.\n$`,
    ),
  );
  first.child.kill('SIGINT');
  await first.ended;
});

test.each([
  ['missing.csv', /there is no such file/],
  ['.', /it is a folder/],
])('%s is refused before anything is served', async (file, message) => {
  const { ended, notes } = open([file, '--port', '0']);
  expect(await ended).toBe(3);
  expect(notes()).toMatch(message);
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { readZip } from '../src/app/book/readZip.ts';
import { writeZip } from '../src/app/book/writeZip.ts';
import { bestPlan } from '../src/app/plan/bestPlan.ts';
import { mustBeFile } from '../src/cli/inputFiles.ts';
import { open } from '../src/cli/open.ts';
import { parseCommand } from '../src/cli/parseCommand.ts';
import { openResults } from '../src/cli/resultFile.ts';
import { LossbookError, type MessageCode, messageCodes } from '../src/errors.ts';
import { oem } from '../src/exchange/oem.ts';
import { buildFlight } from '../src/flight/buildFlight.ts';
import { readLog } from '../src/log/readLog.ts';
import type { ColumnChoice } from '../src/log/types.ts';
import { readMission } from '../src/mission/readCard.ts';
import { readPlan } from '../src/plan/readPlan.ts';
import { flyPlan } from '../src/refly/flyPlan.ts';
import { readLength_m } from '../src/units/readLength.ts';
import { handMadeReview } from './exchange/handMadeReview.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-errors-'));
afterAll(() => rmSync(folder, { recursive: true }));

const encode = (text: string) => new TextEncoder().encode(text);
const rows = Array.from({ length: 20 }, (_, i) => `${i},${5 * i * i},${10 * i}`).join('\n');
const sound = `time_s,altitude_m,speed_m_s\n${rows}\n`;
const log = (text: string | Uint8Array) =>
  readLog(typeof text === 'string' ? encode(text) : text, { name: 'x.csv' });
const mapped = (channel: string, column: string, unit: string | null) =>
  readLog(encode(sound), { name: 'x.csv', map: [{ channel, column, unit } as ColumnChoice] });
const plan = (text: string) => readPlan(text, 'x.plan.csv', readMission({}));
const card = (text: string) => readMission({ card: { name: 'x.mission.json', text } });
const ephemeris = (centre: string) =>
  [
    'CCSDS_OEM_VERS = 2.0',
    'CREATION_DATE = 2031-05-04T00:00:00',
    'ORIGINATOR = LOSSBOOK',
    'META_START',
    'OBJECT_NAME = BOBSTAY',
    'OBJECT_ID = 2031-001A',
    `CENTER_NAME = ${centre}`,
    'REF_FRAME = ICRF',
    'TIME_SYSTEM = UTC',
    'START_TIME = 2031-05-04T00:00:00',
    'STOP_TIME = 2031-05-04T00:00:19',
    'META_STOP',
    ...Array.from(
      { length: 20 },
      (_, i) => `2031-05-04T00:00:${String(i).padStart(2, '0')} ${7000 + i} 0 0 1 7 0`,
    ),
    '',
  ].join('\n');
const silent = { result: () => {}, note: () => {}, width: 80, colour: false, watched: false };

/** What produces each message. A new code has no place to hide: the type asks for its case. */
const cases: Readonly<Record<MessageCode, () => unknown>> = {
  'file-missing': () => mustBeFile(join(folder, 'none.csv')),
  'file-unreadable': () => mustBeFile(folder),
  'file-empty': () => log(''),
  'log-not-text': () => log(Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) % 32)),
  'log-too-large': () => log(`${'x,'.repeat(1500)}y\n${`${'1,'.repeat(1500)}1\n`.repeat(5)}`),
  'log-no-table': () => log('nothing here is a table\n'),
  'log-json-broken': () => log('{"time": [1, 2, 3'),
  'log-no-time': () => log('altitude_m,speed_m_s\n5,1\n3,2\n8,1\n5,1\n3,2\n8,1\n'),
  'log-no-motion': () => log(sound.replace('altitude_m', 'colour').replace('speed_m_s', 'shape')),
  'log-too-short': () => log('time_s,altitude_m,speed_m_s\n0,0,0\n1,5,10\n'),
  'log-is-a-card': () => log('{"mission": "Soft Gate", "world": "earth"}'),
  'log-is-a-plan': () => log(`time_s,pitch_deg,throttle\n${rows}\n`),
  'plan-is-a-card': () => plan('{"mission": "Soft Gate", "world": "earth"}'),
  'plan-no-table': () => plan('time_s\n'),
  'plan-no-axis': () => plan('pitch_deg,throttle\n90,1\n40,1\n'),
  'plan-no-controls': () => plan('time_s,colour\n0,1\n10,2\n20,3\n'),
  'plan-too-short': () => plan('time_s,pitch_deg\n0,90\n'),
  'plan-axis-falls': () => plan('time_s,pitch_deg\n0,90\n20,80\n10,70\n'),
  'plan-row-unplaced': () => plan('time_s,pitch_deg\n0,90\n,80\n20,70\n'),
  'plan-bad-value': () => plan('time_s,pitch_deg,throttle\n0,90,1\n10,80,-4\n'),
  'plan-unknown-event': () => plan('time_s,pitch_deg,event\n0,90,\n10,80,breakfast\n20,70,\n'),
  'ascent-not-found': () =>
    bestPlan({ card: { name: 'x.mission.json', text: '{"world": "earth"}' }, name: 'x' }, () => {}),
  'plan-not-flyable': async () =>
    flyPlan(await plan('time_s,pitch_deg\n0,90\n10,80\n'), readMission({}), null),
  'map-unknown-channel': () => mapped('height', 'altitude_m', null),
  'map-unknown-column': () => mapped('altitude', 'heigth', null),
  'map-unknown-unit': () => mapped('altitude', 'altitude_m', 'furlongs per fortnight'),
  'part-missing': () => readLog(encode(sound), { name: 'x.csv', part: 3 }),
  'card-json-broken': () => card('{"mission": '),
  'card-unknown-field': () => card('{"misson": "Soft Gate"}'),
  'card-bad-value': () => card('{"mission": 5}'),
  'world-unknown': () => readMission({ world: 'earht' }),
  'target-unreadable': () => readLength_m('high'),
  usage: () => parseCommand(['revue']),
  'file-unwritable': () => openResults(join(folder, 'no', 'such', 'folder.jsonl')),
  'book-broken': () => readZip(new Blob(['no archive']), 'x.zip'),
  'book-too-large': () => {
    const content = { size: 5e9, stream: () => new Blob(['x']).stream() } as unknown as Blob;
    return writeZip([{ path: 'x.csv', content }]);
  },
  // The sources have no built page beside them.
  'page-missing': () => open(parseCommand(['open', '--port', '0']), silent),
  'port-taken': () => portTaken(),
  'nothing-to-exchange': () =>
    oem(
      { review: handMadeReview(), strips: { time_s: Float64Array.of(0, 1), channels: {} } },
      { created_ms: 0 },
    ),
  'oem-broken': () => log('CCSDS_OEM_VERS = 2.0\nCREATION_DATE = 2031-05-04T00:00:00\n'),
  'oem-centre-unknown': () => log(ephemeris('VULCAN')),
  cancelled: () => readLog(encode(sound), { name: 'x.csv', signal: AbortSignal.abort() }),
  'no-flight': async () => {
    const still = Array.from({ length: 30 }, (_, i) => `${i},12,0`).join('\n');
    return buildFlight(await log(`time_s,altitude_m,speed_m_s\n${still}\n`), readMission({}));
  },
};

/** The built command, told to listen where this process already does; it prints the message that the code stands for. */
async function portTaken(): Promise<never> {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const command = resolve(import.meta.dirname, '../dist/cli/lossbook.js');
  const { stderr } = spawnSync(process.execPath, [command, 'open', '--port', String(port)], {
    encoding: 'utf8',
  });
  server.close();
  const expected = new LossbookError('port-taken', { port, reason: 'another program has it' });
  expect(stderr).toContain(expected.what);
  throw expected;
}

test('every message of the catalogue has its case', () => {
  expect(Object.keys(cases).toSorted()).toEqual(messageCodes.toSorted());
});

describe('a message appears and says what to do', () => {
  test.each(messageCodes)('%s', async (code) => {
    const error = await (async () => cases[code]())().then(
      () => null,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(LossbookError);
    if (!(error instanceof LossbookError)) return;
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/^\S[\s\S]*\.$/u);
    expect(error.message).not.toMatch(/undefined|NaN|\[object/u);
    expect(error.what.length).toBeGreaterThan(5);
    expect(error.next.length).toBeGreaterThan(5);
  });
});

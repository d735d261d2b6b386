import { spawn } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { version } from '../../package.json';
import type { Review } from '../../src/review/types.ts';

const command = resolve(import.meta.dirname, '../../dist/cli/lossbook.js');
const flights = resolve(import.meta.dirname, '../flights');
const folder = mkdtempSync(join(tmpdir(), 'lossbook-command-'));
const at = (name: string) => join(folder, name);

interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly notes: string;
}

/** Runs the built command as a user would, in the test's folder. */
function lossbook(args: readonly string[], input: string | Uint8Array = ''): Promise<Outcome> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [command, ...args], { cwd: folder });
    let out = '';
    let notes = '';
    child.stdout.on('data', (part: Buffer) => {
      out += part.toString();
    });
    child.stderr.on('data', (part: Buffer) => {
      notes += part.toString();
    });
    child.on('error', fail).on('close', (code) => done({ code, out, notes }));
    child.stdin.on('error', () => undefined).end(input);
  });
}

/** One message on stderr for the exit code, nothing on stdout, no stack trace, no escape. */
async function refuses(args: readonly string[], code: number, message: RegExp, input?: string | Uint8Array) {
  const outcome = await lossbook(args, input);
  expect({ ...outcome, lines: outcome.notes.trimEnd().split('\n').length }).toMatchObject({
    code,
    out: '',
    lines: 1,
  });
  expect(outcome.notes).toMatch(message);
  expect(outcome.notes).not.toMatch(/ {4}at |node:|\.js:\d|\.ts:\d/);
  expect(outcome.notes.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
}

const header = 'time_s,altitude_m,speed_m_s\n';
const rows = Array.from({ length: 40 }, (_, i) => `${i},${5 * i * i},${10 * i}`).join('\n');

beforeAll(() => {
  if (!existsSync(command)) throw new Error('dist/cli/lossbook.js is not there: npm run build makes it');
  copyFileSync(join(flights, 'osselby-short.csv'), at('short.csv'));
  copyFileSync(join(flights, 'osselby-short.mission.json'), at('short.mission.json'));
  copyFileSync(join(flights, 'osselby-short.mission.json'), at('other.json'));
  writeFileSync(at('short-packed.csv.gz'), gzipSync(readFileSync(at('short.csv'))));
  mkdirSync(at('folder.csv'));
  writeFileSync(at('empty.csv'), '');
  writeFileSync(
    at('binary.csv'),
    Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) % 251),
  );
  writeFileSync(at('no-time.csv'), `height_m,speed_m_s\n${rows.replaceAll(/^\d+,/gm, '')}\n`);
  writeFileSync(at('no-motion.csv'), `time_s,battery_V,rssi\n${rows}\n`);
  writeFileSync(at('still.csv'), `${header}${Array.from({ length: 40 }, (_, i) => `${i},0,0`).join('\n')}\n`);
  writeFileSync(at('bare.csv'), `${header}${rows}\n`);
  writeFileSync(at('evil.csv'), `time_s,\u001b[31mevil\u001b]0;owned\u0007,\u009b2Jrssi\n${rows}\n`);
  writeFileSync(at('unknown.mission.json'), '{ "vehicle": { "payloadd_kg": 3 } }');
  writeFileSync(
    at('negative.mission.json'),
    '{ "vehicle": { "stages": [ { "name": "a", "dryMass_kg": -4 } ] } }',
  );
  writeFileSync(at('broken.mission.json'), '{ "world": ');
  writeFileSync(at('climb.plan.csv'), 'altitude_m,pitch_deg\n0,90\n10000,60\n20000,45\n60000,10\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('review', () => {
  test('writes the verdict first, takes the card beside the log and says so on stderr', async () => {
    const { code, out, notes } = await lossbook(['review', 'short.csv']);
    expect([code, notes]).toEqual([
      0,
      'lossbook: short.csv: its mission card short.mission.json lies beside it and is taken\n',
    ]);
    expect(out).toMatch(/^short\.csv · short\.mission\.json · /);
    expect(out).toMatch(/\n\nNot in orbit: /);
    expect(out).toMatch(/^gravity +1,2\d\d[ .]/m);
    expect(out).not.toContain('\u001b');
    for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });

  test('--json is one document for one log and an array for several', async () => {
    const one = await lossbook(['review', 'short.csv', '--json']);
    expect((JSON.parse(one.out) as Review).verdict.code).toBe('suborbital-out-of-propellant');
    const two = await lossbook(['review', 'short.csv', 'short.csv', '--json', '--mission', 'other.json']);
    expect(two).toMatchObject({ code: 0, notes: '' });
    const documents = JSON.parse(two.out) as Review[];
    expect(documents.map((d) => d.source.card)).toEqual(['other.json', 'other.json']);
  });

  test('several reviews stand one after another, parted by a rule', async () => {
    const { code, out } = await lossbook(['review', 'missing.csv', 'short.csv', 'short.csv']);
    expect(code).toBe(3);
    expect(out.match(/^═{80}$/gm)).toHaveLength(1);
    expect(out).toMatch(/^short\.csv · /);
  });

  test('a usage error among several logs is told once, and nothing is reviewed', async () => {
    await refuses(
      ['review', 'short.csv', 'short.csv', '--mission', 'other.json', '--world', 'erth'],
      2,
      /erth/,
    );
  });

  test('a bad log does not stop the rest, and the exit code is the worst', async () => {
    const { code, out, notes } = await lossbook([
      'review',
      'missing.csv',
      'short.csv',
      'empty.csv',
      '--json',
    ]);
    expect(code).toBe(3);
    expect(JSON.parse(out)).toHaveLength(1);
    expect(notes).toMatch(/missing\.csv: there is no such file/);
    expect(notes).toMatch(/empty\.csv: the file holds nothing/);
  });

  test('reads standard input, gzip too', async () => {
    const bytes = readFileSync(at('short-packed.csv.gz'));
    const { code, out } = await lossbook(['review', '-', '--mission', 'short.mission.json', '--json'], bytes);
    expect([code, (JSON.parse(out) as Review).source.file]).toEqual([0, 'standard input']);
  });

  test('--channels writes a table that can be reviewed again with the same verdict', async () => {
    expect((await lossbook(['review', 'short.csv', '--channels', 'out.csv'])).code).toBe(0);
    const again = await lossbook(['review', 'out.csv', '--mission', 'short.mission.json', '--json']);
    expect((JSON.parse(again.out) as Review).verdict.code).toBe('suborbital-out-of-propellant');
  });

  test('--report, --oem and --opm write their files, and the ephemeris can be reviewed', async () => {
    const files = ['--report', 'out.html', '--oem', 'out.oem', '--opm', 'out.opm'];
    expect((await lossbook(['review', 'short.csv', ...files])).code).toBe(0);
    expect(readFileSync(at('out.html'), 'utf8')).toMatch(
      /^<!doctype html>[\s\S]*Not in orbit: 361[\s\S]*<\/html>\n$/,
    );
    expect(readFileSync(at('out.opm'), 'utf8')).toMatch(/^CCSDS_OPM_VERS/);
    const again = await lossbook(['review', 'out.oem', '--mission', 'short.mission.json', '--json']);
    const { orbit } = JSON.parse(again.out) as Review;
    expect(orbit.atCutoff.apoapsisAltitude_m.value ?? 0).toBeCloseTo(170_893, -2);
  });

  test('--map, --world and --target reach the review', async () => {
    const args = ['bare.csv', '--map', 'speed=speed_m_s:m/s', '--world', 'moon', '--target', '90km'];
    const { code, out } = await lossbook(['review', ...args, '--json']);
    expect(code).toBe(0);
    expect((JSON.parse(out) as Review).mission).toMatchObject({ world: expect.stringMatching(/moon/i) });
    expect((JSON.parse(out) as Review).mission.target).toContain('90');
  });

  test.each([
    ['missing.csv', 3, /missing\.csv: there is no such file/],
    ['folder.csv', 2, /there is no log in folder\.csv/],
    ['empty.csv', 3, /empty\.csv: the file holds nothing/],
    ['binary.csv', 3, /binary\.csv: /],
    ['no-time.csv', 3, /no-time\.csv: no column could be understood as time/],
    ['no-motion.csv', 3, /no-motion\.csv: no columns could be understood as altitude and speed/],
    ['still.csv', 4, /still\.csv: .*nothing in it moves/],
    ['other.json', 3, /other\.json: this is a mission card, not a flight log/],
    ['climb.plan.csv', 3, /climb\.plan\.csv: this is a plan/],
    ['evil.csv', 3, /evil\.csv: no columns .*evil.*rssi/],
  ] as const)('of %s ends in one message and exit code %d', async (file, code, message) => {
    await refuses(['review', file], code, message);
  });

  test.each([
    ['missing.mission.json', 3, /missing\.mission\.json: there is no such file/],
    ['unknown.mission.json', 3, /unknown field “.*payloadd_kg”; did you mean “payload_kg”\?/],
    ['negative.mission.json', 3, /dryMass_kg.*-4/],
    ['broken.mission.json', 3, /not valid JSON/],
  ] as const)('with the card %s ends in one message', async (card, code, message) => {
    await refuses(['review', 'bare.csv', '--mission', card], code, message);
  });

  test.each([
    [[], /no command is given; lossbook --help shows how/],
    [['review'], /no log is given; lossbook review --help shows how/],
    [['reviw', 'x'], /did you mean “review”\?/],
    [['compare', 'short.csv'], /a comparison takes two logs or more/],
    [['compare', 'short.csv', 'bare.csv', '--by', 'pilots'], /did you mean “pilot”\?/],
    [['review', 'bare.csv', '--target', 'high'], /“high” is not an altitude/],
    [['review', 'bare.csv', '--world', 'erth'], /there is no world “erth”; did you mean “earth”\?/],
    [['review', 'bare.csv', '--part', '0'], /--part 0 is not a whole number/],
    [['review', 'bare.csv', '--part', '2'], /there is no part 2/],
    [['review', 'bare.csv', '--map', 'speed'], /not of the form CHANNEL=COLUMN/],
    [['review', 'bare.csv', '--map', 'sped=x'], /did you mean “speed”\?/],
    [['review', 'bare.csv', '--map', 'speed=velo'], /has no column “velo”/],
    [['review', 'bare.csv', '--map', 'speed=speed_m_s:furlong'], /“furlong” is not a unit of/],
    [['review', '-', '-'], /standard input \(-\) can be read only once/],
    [['review', 'bare.csv', 'short.csv', '--channels', 'o.csv'], /--channels takes the channels of one log/],
    [['review', 'bare.csv', '--channels', './bare.csv'], /would overwrite an input/],
    [['review', 'bare.csv', '--report', 'o', '--oem', './o'], /would overwrite the file of --report/],
    [['review', 'bare.csv', 'short.csv', '--report', 'o.html'], /--report takes the report of one log/],
    [['review', 'bare.csv', 'short.csv', '--world', 'erth'], /there is no world “erth”/],
    [['check'], /check takes one file/],
    [['open', '--port', '99999'], /--port 99999 is not a number from 0 to 65535/],
    [['open', 'x.csv', '--prot', '1'], /did you mean “--port”\?/],
  ] as [string[], RegExp][])('%j is a usage error', async (args, message) => {
    await refuses(args, 2, message);
  });

  test('a table that cannot be written is told', async () => {
    const { code, notes } = await lossbook(['review', 'bare.csv', '--channels', 'no/such/folder.csv']);
    expect(code).toBe(2);
    expect(notes).toMatch(/no\/such\/folder\.csv: the file cannot be written/);
  });

  test('a reader that closes early is no error', async () => {
    const child = spawn(process.execPath, [command, 'review', 'short.csv', '--json'], { cwd: folder });
    let notes = '';
    child.stderr.on('data', (part: Buffer) => {
      notes += part.toString();
    });
    child.stdout.destroy();
    const code = await new Promise((done) => child.on('close', done));
    expect([code, notes.includes('EPIPE'), notes.includes(' at ')]).toEqual([0, false, false]);
  });
});

describe('check', () => {
  test('of a card says what is understood and what is missing', async () => {
    const { code, out } = await lossbook(['check', 'other.json']);
    expect(code).toBe(0);
    expect(out).toMatch(/^other\.json ─+ understood\n· /);
    expect(out).toContain('Osselby');
  });
  test('of a log lists how each column was read and what is missing', async () => {
    const { code, out } = await lossbook(['check', 'bare.csv']);
    expect(code).toBe(0);
    expect(out).toMatch(/^altitude +altitude_m +m /m);
    expect(out).toMatch(/^· mass: /m);
  });
  test('of a plan says that it is one', async () => {
    expect(await lossbook(['check', 'climb.plan.csv'])).toMatchObject({
      code: 0,
      out: expect.stringContaining('a table of controls against altitude'),
    });
  });
  test('escapes in headers never reach the terminal', async () => {
    writeFileSync(
      at('evil-check.csv'),
      `time_s,altitude_m,speed_m_s,\u001b[31mevil\u001b]0;x\u0007\n${rows.replaceAll(/$/gm, ',1')}\n`,
    );
    const { code, out, notes } = await lossbook(['check', 'evil-check.csv']);
    expect([code, notes]).toEqual([0, '']);
    expect(out).toContain('evil');
    expect(out.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });
  test.each([
    ['missing.csv', /there is no such file/],
    ['empty.csv', /holds nothing/],
    ['binary.csv', /binary\.csv: /],
    ['unknown.mission.json', /unknown field/],
    ['broken.mission.json', /not valid JSON/],
  ] as const)('of %s ends in one message', async (file, message) => {
    await refuses(['check', file], 3, message);
  });
});

describe('help and version', () => {
  test('go to stdout with exit code 0', async () => {
    expect(await lossbook(['--version'])).toEqual({ code: 0, out: `lossbook ${version}\n`, notes: '' });
    for (const args of [['--help'], ['review', '--help'], ['check', '--help'], ['open', '--help']]) {
      const { code, out, notes } = await lossbook(args);
      expect([code, notes]).toEqual([0, '']);
      expect(out).toContain('lossbook');
    }
  });
});

describe('the built command', () => {
  test('is one file for Node', () => {
    expect(readFileSync(command, 'utf8').startsWith('#!/usr/bin/env node\n')).toBe(true);
    expect(statSync(command).size).toBeLessThan(2_000_000);
  });
});

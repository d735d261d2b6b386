import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import {
  cardBeside,
  mustBeFile,
  openLog,
  planBeside,
  readCardText,
  readInput,
} from '../../src/cli/inputFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-files-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);
writeFileSync(at('a.csv'), 'x');
writeFileSync(at('a.mission.json'), '\ufeff{}');
writeFileSync(at('b.c.csv'), 'x');
writeFileSync(at('broken.mission.json'), Uint8Array.of(0xc3, 0x28));
mkdirSync(at('b.c.mission.json'));
writeFileSync(at('a.plan.csv'), 'x');
writeFileSync(at('b.c.plan.json'), 'x');

describe('files', () => {
  test('are read whole, and named without their folders', async () => {
    expect(await readInput(at('a.csv'))).toMatchObject({ name: 'a.csv', bytes: Buffer.from('x') });
  });
  test.each([
    ['missing.csv', 'file-missing'],
    ['', 'file-unreadable'],
    ['a.csv/x', 'file-unreadable'],
  ])('%j cannot be read, and the message says why', async (name, code) => {
    await expect(readInput(at(name))).rejects.toMatchObject({ code, exit: 3 });
    await expect(mustBeFile(at(name))).rejects.toMatchObject({ code, exit: 3 });
  });
  test('a large log is read part by part', async () => {
    const bytes = new Uint8Array(17e6).fill(49).fill(50, 16_500_000);
    writeFileSync(at('large.csv'), bytes);
    const log = await openLog(at('large.csv'));
    expect(log.name).toBe('large.csv');
    if (!('read' in log.bytes)) throw new Error('it was read whole');
    const into = new Uint8Array(10);
    expect([log.bytes.size, await log.bytes.read(16_499_995, into)]).toEqual([17e6, 10]);
    expect([...into]).toEqual([49, 49, 49, 49, 49, 50, 50, 50, 50, 50]);
    await log.close();
    await expect(log.bytes.read(0, into)).rejects.toMatchObject({ code: 'file-unreadable' });
  });
  test('a small log is read at once, and one that is not there is told', async () => {
    const log = await openLog(at('a.csv'));
    expect(log).toMatchObject({ name: 'a.csv', bytes: Buffer.from('x') });
    await log.close();
    await expect(openLog(at('missing.csv'))).rejects.toMatchObject({ code: 'file-missing', exit: 3 });
  });
  test('a card is UTF-8, with or without a byte-order mark', async () => {
    expect(await readCardText(at('a.mission.json'))).toEqual({ name: 'a.mission.json', text: '{}' });
    await expect(readCardText(at('broken.mission.json'))).rejects.toMatchObject({ code: 'file-unreadable' });
  });
});

describe('a card beside its log', () => {
  test.each(['a.csv', 'a.csv.gz', 'a.json'])('is found by %s', async (name) => {
    expect(await cardBeside(at(name))).toBe(at('a.mission.json'));
  });
  test.each(['other.csv', 'b.c.csv'])('is not found by %s', async (name) => {
    expect(await cardBeside(at(name))).toBeNull();
  });
  test('standard input has none', async () => {
    expect(await cardBeside('-')).toBeNull();
  });
});

describe('a plan beside its log', () => {
  test('is a table or JSON', async () => {
    expect(await planBeside(at('a.csv'))).toBe(at('a.plan.csv'));
    expect(await planBeside(at('b.c.csv'))).toBe(at('b.c.plan.json'));
  });
  test('is not found where there is none, nor by standard input', async () => {
    expect(await planBeside(at('other.csv'))).toBeNull();
    expect(await planBeside('-')).toBeNull();
  });
});

import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../src/log/decode.ts';
import { bytesOf } from './inventedAscent.ts';

const text = 'Höhe [m],Neigung [°]\n1,2\n3,4\n';
const utf16 = (bigEndian: boolean, mark: boolean): Uint8Array => {
  const units = [...(mark ? '\ufeff' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(units.flatMap((u) => (bigEndian ? [u >> 8, u & 255] : [u & 255, u >> 8])));
};

describe('decodeText', () => {
  test.each([
    ['UTF-8', bytesOf(text)],
    ['UTF-8 with mark', Uint8Array.from([0xef, 0xbb, 0xbf, ...bytesOf(text)])],
    ['UTF-16 LE with mark', utf16(false, true)],
    ['UTF-16 BE with mark', utf16(true, true)],
    ['UTF-16 LE', utf16(false, false)],
    ['UTF-16 BE', utf16(true, false)],
    ['Windows-1252', Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)))],
    ['gzip', new Uint8Array(gzipSync(text))],
  ])('%s', async (_, bytes) => {
    expect(await decodeText(bytes, 'x')).toEqual({ text, notes: [] });
  });

  test('a character cut at the end is dropped', async () => {
    expect((await decodeText(bytesOf('1,2°').slice(0, -1), 'x')).text).toBe('1,2');
  });

  test('a damaged gzip file gives what could be unpacked', async () => {
    const long = 'time,altitude\n'.repeat(100_000);
    const packed = new Uint8Array(gzipSync(long));
    const { text: got, notes } = await decodeText(packed.slice(0, packed.length - 6), 'x');
    expect(notes.map((n) => n.code)).toEqual(['compressed-file-cut']);
    expect(long.startsWith(got)).toBe(true);
    expect(got.length).toBeGreaterThan(1000);
  });

  test('a few NULs are left out and noted, many are no text', async () => {
    const { text: got, notes } = await decodeText(bytesOf(`${'1,2\n'.repeat(100)}\0\0`), 'x');
    expect([got.length, notes[0]?.code, notes[0]?.count]).toEqual([400, 'null-characters', 2]);
    await expect(decodeText(bytesOf('1,\0\0\0\0\0,2\n'), 'x')).rejects.toMatchObject({
      code: 'log-not-text',
    });
  });

  test.each([
    [new Uint8Array(0), 'file-empty'],
    [bytesOf('\n \t\n'), 'file-empty'],
    [bytesOf('PK\u0003\u0004rest of an archive'), 'log-not-text'],
    [Uint8Array.from({ length: 300 }, (_, i) => (i * 37) % 32), 'log-not-text'],
    [Uint8Array.from([0x1f, 0x8b, 1, 2, 3]), 'log-not-text'],
    [new Uint8Array(gzipSync('')), 'file-empty'],
  ])('%# is refused', async (bytes, code) => {
    await expect(decodeText(bytes, 'x')).rejects.toMatchObject({ code });
  });

  test('a bomb is stopped at the limit', { timeout: 30_000 }, async () => {
    const bomb = new Uint8Array(gzipSync(new Uint8Array(530e6), { level: 1 }));
    expect(bomb.length).toBeLessThan(5e6);
    await expect(decodeText(bomb, 'x')).rejects.toMatchObject({ code: 'log-too-large' });
  });
});

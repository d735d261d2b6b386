import { crc32, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readZip } from '../../../src/app/book/readZip.ts';
import { writeZip } from '../../../src/app/book/writeZip.ts';

const archive = () =>
  writeZip([
    { path: 'book.json', content: new Blob(['{"a":1}']) },
    { path: 'flights/0001 Abend – ä/log.csv', content: new Blob(['t,alt\n'.repeat(5000)]) },
    { path: 'empty', content: new Blob([]) },
  ]);

test('what is written is read back, whatever the bytes', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.uniqueArray(
        fc.tuple(fc.string({ minLength: 1, unit: 'grapheme' }), fc.uint8Array({ maxLength: 3000 })),
        {
          selector: ([path]) => path,
          maxLength: 6,
        },
      ),
      async (files) => {
        const entries = files.map(([path, bytes]) => ({
          path,
          content: new Blob([bytes as Uint8Array<ArrayBuffer>]),
        }));
        const read = await readZip(await writeZip(entries), 'x.zip');
        expect([...read.keys()]).toEqual(files.map(([path]) => path));
        for (const [path, bytes] of files) {
          expect(new Uint8Array((await (await read.get(path)?.())?.arrayBuffer()) ?? [])).toEqual(bytes);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('headers, sums and data are as APPNOTE 6.3 says, checked by zlib', async () => {
  const content = 't,alt\n'.repeat(5000);
  const bytes = Buffer.from(await (await archive()).arrayBuffer());
  const start = bytes.indexOf('flights/') - 30;
  const name = 'flights/0001 Abend – ä/log.csv';
  expect(bytes.readUInt32LE(start)).toBe(0x04034b50);
  expect(bytes.readUInt16LE(start + 6) & 0x0800, 'the name is UTF-8').toBe(0x0800);
  expect(bytes.readUInt16LE(start + 8), 'deflated').toBe(8);
  expect(bytes.readUInt32LE(start + 14)).toBe(crc32(content));
  expect(bytes.readUInt32LE(start + 22)).toBe(content.length);
  expect(bytes.readUInt16LE(start + 26)).toBe(Buffer.byteLength(name));
  const data = start + 30 + Buffer.byteLength(name);
  const packed = bytes.subarray(data, data + bytes.readUInt32LE(start + 18));
  expect(inflateRawSync(packed).toString()).toBe(content);
  const end = bytes.length - 22;
  expect(bytes.readUInt32LE(end)).toBe(0x06054b50);
  expect(bytes.readUInt16LE(end + 10)).toBe(3);
  expect(bytes.readUInt32LE(end + 16) + bytes.readUInt32LE(end + 12)).toBe(end);
});

test('an archive cut off anywhere is told, never half read', async () => {
  const whole = await archive();
  for (const share of [0, 0.1, 0.5, 0.9, 0.999]) {
    const cut = whole.slice(0, Math.floor(whole.size * share));
    await expect(readZip(cut, 'cut.zip'), `${share}`).rejects.toMatchObject({ code: 'book-broken' });
  }
});

test('a damaged file inside is told by its sum', async () => {
  const bytes = new Uint8Array(await (await archive()).arrayBuffer());
  const damaged = bytes.slice();
  // In the middle of the second file's deflated data.
  const at = 30 + 'book.json'.length + 9 + 30 + 60;
  damaged[at] = (damaged[at] ?? 0) ^ 0xff;
  const read = await readZip(new Blob([damaged]), 'd.zip');
  await expect(read.get('flights/0001 Abend – ä/log.csv')?.()).rejects.toMatchObject({ code: 'book-broken' });
});

test('a file that unpacks to more than its list says is refused', async () => {
  const bytes = new Uint8Array(await (await archive()).arrayBuffer());
  const view = new DataView(bytes.buffer);
  const list = view.getUint32(bytes.length - 22 + 16, true);
  const second = list + 46 + 'book.json'.length;
  view.setUint32(second + 24, 10, true);
  const read = await readZip(new Blob([bytes]), 'bomb.zip');
  await expect(read.get('flights/0001 Abend – ä/log.csv')?.()).rejects.toMatchObject({ code: 'book-broken' });
});

test('no fuzzed bytes do more than be refused', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
      const outcome = await readZip(new Blob([bytes as Uint8Array<ArrayBuffer>]), 'f.zip').catch(
        (e: unknown) => e,
      );
      expect(outcome instanceof Map || (outcome as { code?: string }).code === 'book-broken').toBe(true);
    }),
    { numRuns: 200 },
  );
});

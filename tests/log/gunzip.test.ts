import { gzipSync } from 'node:zlib';
import { afterEach, expect, test, vi } from 'vitest';
import { gunzip } from '../../src/log/gunzip.ts';

const texts = ['time,altitude\n', '0,1\n'.repeat(5000), '1,2\n'];
const members = texts.map((text) => new Uint8Array(gzipSync(text)));
const joined = (parts: readonly Uint8Array[]) => new Uint8Array(Buffer.concat(parts));
const textOf = (content: Uint8Array) => new TextDecoder().decode(content);

afterEach(() => vi.unstubAllGlobals());

test('all members of a file are read', async () => {
  const { content, cut } = await gunzip(joined(members), 'x');
  expect([textOf(content), cut]).toEqual([texts.join(''), false]);
});

/** Unpacks one member and takes what follows it for damage, as the Compression Standard asks of browsers. */
class OneMember extends TransformStream<Uint8Array, Uint8Array> {
  constructor() {
    const came: Uint8Array[] = [];
    super({
      transform: (chunk) => void came.push(chunk),
      flush: (controller) => {
        const all = Buffer.concat(came);
        const which = members.findIndex((member) => all.subarray(0, member.length).equals(member));
        if (which >= 0) controller.enqueue(new TextEncoder().encode(texts[which] ?? ''));
        if (which < 0 || all.length > (members[which]?.length ?? 0)) throw new TypeError('junk');
      },
    });
  }
}

test('also where the platform stops behind the first', async () => {
  vi.stubGlobal('DecompressionStream', OneMember);
  const { content, cut } = await gunzip(joined(members), 'x');
  expect([textOf(content), cut]).toEqual([texts.join(''), false]);
  const spoiled = joined([...members, Uint8Array.of(0x1f, 0x8b, 8, 0, 1, 2)]);
  const damaged = await gunzip(spoiled, 'x');
  expect([textOf(damaged.content), damaged.cut]).toEqual([texts.join(''), true]);
});

test('damage is told, and what stands before it kept', async () => {
  const { content, cut } = await gunzip(joined([...members.slice(0, 2), members[2]!.slice(0, 12)]), 'x');
  expect([textOf(content).startsWith(texts.slice(0, 2).join('')), cut]).toEqual([true, true]);
  await expect(gunzip(Uint8Array.of(0x1f, 0x8b, 8, 0), 'x')).rejects.toMatchObject({ code: 'log-not-text' });
});

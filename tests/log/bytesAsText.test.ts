import { expect, test } from 'vitest';
import { BytesAsText } from '../../src/log/bytesAsText.ts';

const head = '\ufeff# Höhe über See, °\n';
const text = `${head}${Array.from({ length: 20_000 }, (_, i) => `${i},${i * 2}\n`).join('')}`;
const bytes = new TextEncoder().encode(text);
const shown = text.slice(1);

test('bytes look like their text', () => {
  const view = BytesAsText.of(bytes);
  expect(view?.length).toBe(shown.length);
  expect(view?.mark).toBe(3);
  // The head ends at a line end somewhat below 65,536 bytes.
  for (const [from, to] of [
    [0, 30],
    [5, 70_000],
    [65_000, 66_000],
    [100_000, 100_020],
    [shown.length - 5, shown.length + 5],
  ] as const) {
    expect(view?.slice(from, to)).toBe(shown.slice(from, to));
  }
  for (const from of [0, 17, 65_530, 65_540, 150_000, shown.length])
    expect(view?.indexOf('\n', from)).toBe(shown.indexOf('\n', from));
});

test('bytes whose head is no UTF-8 are no text', () => {
  expect(BytesAsText.of(Uint8Array.from([0x48, 0xf6, 0x68, 0x65]))).toBe(null);
});

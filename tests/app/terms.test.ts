import { expect, test } from 'vitest';
import { termOf, terms } from '../../src/app/terms.ts';
import { causes } from '../../src/exchange/report/causes.ts';

test('each term has two sentences', () => {
  for (const { name, text } of terms) {
    const sentences = text.match(/[^.]+\.(?=\s|$)/g) ?? [];
    expect(sentences.length, name).toBe(2);
  }
});

test('no label stands for two terms', () => {
  const labels = terms.flatMap((t) => [t.name, ...(t.also ?? [])].map((l) => l.toLowerCase()));
  expect(new Set(labels).size).toBe(labels.length);
});

test('every entry of the ledger is explained', () => {
  expect(causes.filter(({ label }) => termOf(label) === null).map((c) => c.label)).toEqual([]);
});

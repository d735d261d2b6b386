import { expect, test } from 'vitest';
import { quantityOf } from '../../src/log/quantities.ts';
import { channelNames } from '../../src/log/types.ts';
import { blockingWords, noiseWords, phrases, plainWords } from '../../src/log/vocabulary.ts';

test('every phrase is made of plain words that some written word leads to', () => {
  const plain = new Set(plainWords.values());
  for (const channel of channelNames) {
    expect(quantityOf[channel]).toBeDefined();
    for (const word of phrases[channel].flatMap((phrase) => phrase.split(' ')))
      expect(plain, word).toContain(word);
  }
});

test('no phrase names two channels', () => {
  const seen = new Map<string, string>();
  for (const channel of channelNames) {
    for (const phrase of phrases[channel]) {
      const key = phrase.split(' ').sort().join(' ');
      expect(seen.get(key) ?? channel, phrase).toBe(channel);
      seen.set(key, channel);
    }
  }
});

test('a word does not both block and say nothing', () => {
  expect([...blockingWords].filter((word) => noiseWords.has(word))).toEqual([]);
});

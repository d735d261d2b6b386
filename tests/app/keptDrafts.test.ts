import { beforeEach, expect, test } from 'vitest';
import { type DraftStore, dropDraft, keepDraft, keptDraft } from '../../src/app/keptDrafts.ts';

let kept: Map<string, string>;
let store: DraftStore;
beforeEach(() => {
  kept = new Map();
  store = {
    get length() {
      return kept.size;
    },
    key: (i) => [...kept.keys()][i] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
  };
});

test('a draft comes back for its flight and its log, and for no other', () => {
  keepDraft(store, 'card', 'open:0', { log: 'dusk.csv', text: '{}', at: 5 });
  expect(keptDraft(store, 'card', 'open:0', 'dusk.csv')).toEqual({ log: 'dusk.csv', text: '{}', at: 5 });
  expect(keptDraft(store, 'card', 'open:0', 'dawn.csv')).toBeNull();
  expect(keptDraft(store, 'card', 'open:1', 'dusk.csv')).toBeNull();
  dropDraft(store, 'card', 'open:0');
  expect(keptDraft(store, 'card', 'open:0', 'dusk.csv')).toBeNull();
});

test('the oldest give way, other things in the storage stay', () => {
  kept.set('lossbook-units', 'ft');
  for (let i = 0; i < 30; i++) keepDraft(store, 'card', `book:${i}`, { log: 'a', text: String(i), at: i });
  expect(kept.size).toBe(21);
  expect(keptDraft(store, 'card', 'book:9', 'a')).toBeNull();
  expect(keptDraft(store, 'card', 'book:10', 'a')?.text).toBe('10');
  expect(kept.get('lossbook-units')).toBe('ft');
});

test('what is no draft is none, and a storage that refuses does no harm', () => {
  kept.set('lossbook-card:x', 'not JSON');
  expect(keptDraft(store, 'card', 'x', '')).toBeNull();
  const refusing: DraftStore = {
    ...store,
    length: 0,
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  };
  keepDraft(refusing, 'card', 'x', { log: '', text: '{}', at: 1 });
  expect(keptDraft(refusing, 'card', 'x', '')).toBeNull();
});

test('a plan and a card of one flight are two drafts; a plan has its name', () => {
  keepDraft(store, 'card', 'open:0', { log: 'dusk.csv', text: '{}', at: 5 });
  expect(
    keepDraft(store, 'plan', 'open:0', { log: 'dusk.csv', name: 'a.plan.csv', text: 'time_s', at: 6 }),
  ).toBe(true);
  dropDraft(store, 'card', 'open:0');
  expect(keptDraft(store, 'card', 'open:0', 'dusk.csv')).toBeNull();
  expect(keptDraft(store, 'plan', 'open:0', 'dusk.csv')).toEqual({
    log: 'dusk.csv',
    name: 'a.plan.csv',
    text: 'time_s',
    at: 6,
  });
});

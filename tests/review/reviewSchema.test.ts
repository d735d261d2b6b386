import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { reviewJson } from '../../src/exchange/reviewJson.ts';
import cardSchema from '../../src/mission/missionCard.schema.json' with { type: 'json' };
import type { ReviewRequest } from '../../src/review/readRequest.ts';
import schema from '../../src/review/review.schema.json' with { type: 'json' };
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { handMadeReview } from '../exchange/handMadeReview.ts';
import { cutLog, type ReferenceName, readCardText, referenceNames } from '../referenceFlights.ts';
import { reviewSix } from './reviewSix.ts';

/** An independent validator; `strict` also refuses keywords that it does not know. */
const ajv = new Ajv({ strict: true, strictRequired: false, strictTypes: false, allErrors: true });
const acceptsReview = ajv.compile(schema);
const acceptsCard = ajv.compile(cardSchema);

/** What the schema finds wrong with a document, after the way through JSON. */
function faults(document: Parameters<typeof reviewJson>[0]): unknown {
  return acceptsReview(JSON.parse(reviewJson(document))) ? [] : acceptsReview.errors?.slice(0, 5);
}

type Node = Readonly<Record<string, unknown>>;

/** Every field that the schema names, with its path. */
function fields(node: Node, path = ''): [string, Node][] {
  const own = Object.entries((node.properties ?? {}) as Record<string, Node>).flatMap(([key, field]) => [
    [`${path}.${key}`, field] as [string, Node],
    ...fields(field, `${path}.${key}`),
  ]);
  const inside = [node.items, ...((node.anyOf ?? []) as Node[])].filter((n) => n !== undefined) as Node[];
  const named = Object.entries((node.$defs ?? {}) as Record<string, Node>);
  return [
    ...own,
    ...inside.flatMap((n) => fields(n, `${path}[]`)),
    ...named.flatMap(([k, n]) => fields(n, k)),
  ];
}

describe('the published schema of the review', () => {
  test('describes every field', () => {
    const all = fields(schema as Node);
    expect(all.length).toBeGreaterThan(150);
    for (const [path, field] of all) expect(field.description, path).toBeTypeOf('string');
  });

  test('takes the hand-made review', () => {
    expect(faults(handMadeReview())).toEqual([]);
  });

  test.each(referenceNames)('takes the review of %s', async (name) => {
    expect(faults((await reviewSix(name, 20)).review)).toEqual([]);
  });

  test('takes a review against a plan', async () => {
    const bytes = (name: ReferenceName) => new TextEncoder().encode(cutLog(name, undefined, 5));
    const { review } = await reviewFlight({
      log: { name: 'short.csv', bytes: bytes('osselby-short') },
      card: { name: 'card', text: readCardText('osselby-short') },
      plan: { name: 'nominal.csv', bytes: bytes('osselby-nominal') },
    });
    expect(review.againstPlan).not.toBeNull();
    expect(faults(review)).toEqual([]);
  });

  test.each([
    ['a field that it does not name', { extra: 1 }],
    ['a verdict that is none', { verdict: { code: 'splendid', text: '', detail: '' } }],
    ['another version', { schema: 'lossbook-review/2' }],
    ['a list that is missing', { burns: undefined }],
  ])('refuses %s', (_what, change) => {
    expect(acceptsReview({ ...handMadeReview(), ...change })).toBe(false);
  });

  test('refuses a figure without value and reason, and one that is unavailable with a value', () => {
    const review = handMadeReview();
    const put = (margin: object) => ({ ...review, budget: { ...review.budget, margin } });
    const none = { value: null, low: null, high: null };
    expect(acceptsReview(put({ ...none, basis: 'unavailable' }))).toBe(false);
    expect(acceptsReview(put({ ...none, basis: 'derived' }))).toBe(false);
    expect(acceptsReview(put({ value: 1, low: 0, high: 2, basis: 'unavailable', reason: 'x' }))).toBe(false);
    expect(acceptsReview(put({ ...none, basis: 'unavailable', reason: 'x' }))).toBe(true);
  });
});

const samples = 'sample-logs';
/** One flight of each kind; of the fifteen runs of the long ladder one stands for the rest. */
const sampleList = (
  JSON.parse(readFileSync(join(samples, 'index.json'), 'utf8')) as { log: string; card?: string | null }[]
).filter(({ log }) => !log.startsWith('ladder-') || log === 'ladder-medlar-1.csv');

test.each(sampleList)('the review of the sample $log keeps the schema', async ({ log, card }) => {
  const request: ReviewRequest = {
    log: { name: log, bytes: readFileSync(join(samples, log)) },
    ...(card ? { card: { name: card, text: readFileSync(join(samples, card), 'utf8') } } : {}),
  };
  expect(faults((await reviewFlight(request)).review)).toEqual([]);
});

const cards = ['tests/flights', samples].flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.mission.json'))
    .map((file) => join(folder, file)),
);

test('there are cards to check', () => {
  expect(cards.map((c) => basename(c))).toContain('osselby-short.mission.json');
});

test.each(cards)('the card %s keeps its schema', (path) => {
  expect(acceptsCard(JSON.parse(readFileSync(path, 'utf8'))) ? [] : acceptsCard.errors).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import { reviewJson } from '../../src/exchange/reviewJson.ts';
import type { Review } from '../../src/review/types.ts';
import { handMadeReview } from './handMadeReview.ts';

/** The same document with every object's fields in reverse order. */
function reversed<T>(value: T): T {
  if (Array.isArray(value)) return value.map(reversed) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([k, v]) => [k, reversed(v)]),
  ) as T;
}

describe('reviewJson', () => {
  test('reads back as the same document', () => {
    expect(JSON.parse(reviewJson(handMadeReview()))).toEqual(handMadeReview());
  });

  test('begins with the schema and the verdict, two spaces deep, and ends in a line feed', () => {
    const text = reviewJson(handMadeReview());
    expect(text.startsWith('{\n  "schema": "lossbook-review/1",\n  "verdict": {\n    "code"')).toBe(true);
    expect(text.endsWith('}\n')).toBe(true);
  });

  test('the order of fields of the document and of figures does not follow how they were built', () => {
    const document = JSON.parse(reviewJson(reversed(handMadeReview()))) as Review;
    expect(Object.keys(document).slice(0, 3)).toEqual(['schema', 'verdict', 'source']);
    expect(Object.keys(document.ledger.ground.ideal)).toEqual(['value', 'low', 'high', 'basis']);
  });

  test('several reviews become an array', () => {
    const text = reviewJson([handMadeReview(), handMadeReview()]);
    expect(JSON.parse(text)).toHaveLength(2);
    expect(JSON.parse(reviewJson([]))).toEqual([]);
  });

  test('control characters of the log are escaped and nothing is lost', () => {
    const review = handMadeReview();
    const file = 'a\u001b[31m\u009b0m\u007f\u202eb.csv';
    const text = reviewJson({ ...review, source: { ...review.source, file } });
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
    expect((JSON.parse(text) as Review).source.file).toBe(file);
  });
});

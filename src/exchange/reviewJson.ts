import type { Review } from '../review/types.ts';
import { inOrder, plainJson } from './plainJson.ts';

/** Fields in the order that a reader wants them; fields of other names keep the order they have. */
const fieldOrder = [
  'schema',
  'verdict',
  'source',
  'mission',
  'ledger',
  'orbit',
  'budget',
  'burns',
  'findings',
];
/**
 * The review document as JSON, two spaces deep, fields in a fixed order, ending in a line feed. Several reviews
 * become an array. Control characters are escaped, so that the text is safe on a terminal and loses nothing.
 */
export function reviewJson(review: Review | readonly Review[]): string {
  const ordered = (document: Review) => inOrder(document, fieldOrder);
  const plain = isList(review) ? review.map(ordered) : ordered(review);
  return plainJson(plain);
}

function isList(review: Review | readonly Review[]): review is readonly Review[] {
  return Array.isArray(review);
}

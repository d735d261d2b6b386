import type { Review } from '../review/types.ts';

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
const figureOrder = ['value', 'low', 'high', 'basis', 'reason', 'assumptions'];

/** Characters that JSON may hold raw but that a terminal acts on: DEL, C1 controls, direction overrides. */
const unsafe = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu;

/**
 * The review document as JSON, two spaces deep, fields in a fixed order, ending in a line feed. Several reviews
 * become an array. Control characters are escaped, so that the text is safe on a terminal and loses nothing.
 */
export function reviewJson(review: Review | readonly Review[]): string {
  const ordered = (document: Review) => inOrder(document, fieldOrder);
  const plain = isList(review) ? review.map(ordered) : ordered(review);
  const text = JSON.stringify(plain, figuresInOrder, 2);
  return `${text.replace(unsafe, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`;
}

function isList(review: Review | readonly Review[]): review is readonly Review[] {
  return Array.isArray(review);
}

function figuresInOrder(_key: string, value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'low' in value ? inOrder(value, figureOrder) : value;
}

function inOrder(record: object, order: readonly string[]): Record<string, unknown> {
  const fields = Object.entries(record);
  const first = order.flatMap((name) => fields.filter(([key]) => key === name));
  return Object.fromEntries([...first, ...fields.filter(([key]) => !order.includes(key))]);
}

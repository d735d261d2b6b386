import { plainText } from './plainText.ts';

/** A copy of a plain document with every text in it, at any depth, made harmless for a terminal. */
export function plainDocument<T>(value: T): T {
  if (typeof value === 'string') return plainText(value) as T;
  if (Array.isArray(value)) return value.map((item: unknown) => plainDocument(item)) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plainDocument(item)])) as T;
  }
  return value;
}

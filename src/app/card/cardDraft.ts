/** A mission card while it is written: plain JSON, perhaps not yet acceptable. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
export type JsonObject = { readonly [key: string]: Json };

/** Where a value stands in a card. */
export type Path = readonly (string | number)[];

/** `vehicle.stages[1].dryMass_kg`, as the reader of cards names it. */
export function pathText(path: Path): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
    '',
  );
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}

/** The card of a text; null where the text is no JSON object. */
export function cardOf(text: string): JsonObject | null {
  try {
    const value = JSON.parse(text) as Json;
    return isObject(value) ? value : null;
  } catch {
    return null;
  }
}

/** The value at a place; undefined where nothing stands there. */
export function valueAt(card: Json | undefined, path: Path): Json | undefined {
  let at = card;
  for (const key of path) {
    if (typeof key === 'number') at = isList(at) ? at[key] : undefined;
    else at = isObject(at) && Object.hasOwn(at, key) ? at[key] : undefined;
  }
  return at;
}

/** The list at a place; empty where there is none. */
export function listAt(card: Json, path: Path): readonly Json[] {
  const value = valueAt(card, path);
  return isList(value) ? value : [];
}

/** The card with another value at a place; undefined takes it out, and what it leaves empty with it. */
export function withValue(card: JsonObject, path: Path, value: Json | undefined): JsonObject {
  return (put(card, path, value) ?? {}) as JsonObject;
}

function put(node: Json | undefined, path: Path, value: Json | undefined): Json | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (typeof key === 'number') {
    const list = isList(node) ? [...node] : [];
    const inner = put(list[key], rest, value);
    if (inner === undefined && rest.length === 0) list.splice(key, 1);
    else list[key] = inner ?? {};
    return list.length === 0 ? undefined : list;
  }
  const object = isObject(node) ? node : {};
  const inner = put(object[key], rest, value);
  const { [key]: _, ...others } = object;
  if (inner === undefined) return Object.keys(others).length === 0 && path.length > 0 ? undefined : others;
  // A field that was there keeps its place.
  return Object.hasOwn(object, key)
    ? Object.fromEntries(Object.entries(object).map(([k, v]) => [k, k === key ? inner : v]))
    : { ...object, [key]: inner };
}

/** The list with one of its members moved by a step. */
export function moved(list: readonly Json[], index: number, step: -1 | 1): readonly Json[] {
  const copy = [...list];
  const [member] = copy.splice(index, 1);
  if (member !== undefined) copy.splice(index + step, 0, member);
  return copy;
}

/** Fields in the order of the documentation, whatever order they were filled in. */
const order = ['$schema', 'mission', 'world', 'site', 'target', 'vehicle', 'limits', 'flight', 'return'];

/** A card as a text for people: two blanks a level, pairs of numbers on one line. */
export function cardText(card: JsonObject): string {
  const known = order.filter((key) => Object.hasOwn(card, key));
  const others = Object.keys(card).filter((key) => !order.includes(key));
  const sorted = Object.fromEntries([...known, ...others].map((key) => [key, card[key] ?? null]));
  return JSON.stringify(sorted, null, 2).replace(
    /\[\n\s*(-?[\d.eE+-]+(?:,\s*-?[\d.eE+-]+)*)\s*\]/gu,
    (_, inner: string) => `[${inner.replace(/\s*,\s*/gu, ', ')}]`,
  );
}

/** An element as a strict reader of the report's markup finds it. */
export interface Element {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (Element | string)[];
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

function decoded(text: string): string {
  return text.replace(/&(\w+);/g, (all, name: string) => entities[name] ?? all);
}

/** Reads markup whose elements are all closed, but for `meta`; throws where it is not well formed. */
export function readMarkup(html: string): Element {
  const root: Element = { tag: 'root', attributes: {}, children: [] };
  const open = [root];
  const pattern = /<!doctype html>|<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*>|([^<]+)/gy;
  let at = 0;
  while (at < html.length) {
    pattern.lastIndex = at;
    const match = pattern.exec(html);
    if (match === null) throw new Error(`not markup: ${html.slice(at, at + 60)}`);
    at = pattern.lastIndex;
    const [, closing, tag, written = '', text] = match;
    const parent = open[open.length - 1] ?? root;
    if (text !== undefined) parent.children.push(decoded(text));
    else if (closing === '/') {
      if (parent.tag !== tag) throw new Error(`</${tag}> closes <${parent.tag}>`);
      open.pop();
    } else if (tag !== undefined) {
      const attributes = [...written.matchAll(/([\w:-]+)="([^"]*)"/g)].map((m) => [
        m[1],
        decoded(m[2] ?? ''),
      ]);
      const element = { tag, attributes: Object.fromEntries(attributes), children: [] };
      parent.children.push(element);
      if (tag !== 'meta') open.push(element);
    }
  }
  if (open.length !== 1) throw new Error(`<${open[open.length - 1]?.tag}> is not closed`);
  return root;
}

/** All elements, outer before inner. */
export function elementsOf(element: Element): Element[] {
  const inner = element.children.filter((c) => typeof c !== 'string');
  return inner.flatMap((c) => [c, ...elementsOf(c)]);
}

export function textOf(element: Element | string): string {
  return typeof element === 'string' ? element : element.children.map(textOf).join('');
}

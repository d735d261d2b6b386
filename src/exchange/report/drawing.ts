/**
 * An element of a picture as plain data. Page, print and saved report draw the same pictures from it, and a text
 * that comes from a log or a card never becomes markup. Colours are the tokens of the page and the report, as
 * `var(--ink)`.
 */
export interface Drawing {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Drawing | string)[];
}

type Child = Drawing | string | null | readonly (Drawing | string | null)[];

/** An element; attributes that are null are left out, lists of children are laid flat. */
export function draw(
  tag: string,
  attributes: Readonly<Record<string, string | number | null>>,
  ...children: readonly Child[]
): Drawing {
  const given = Object.entries(attributes).filter((a): a is [string, string | number] => a[1] !== null);
  return {
    tag,
    attributes: Object.fromEntries(given),
    children: children.flat().filter((c) => c !== null) as (Drawing | string)[],
  };
}

/** The picture's frame: one image to those who do not see it, with one sentence. */
export function picture(
  width: number,
  height: number,
  sentence: string,
  ...children: readonly Child[]
): Drawing {
  return draw(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      role: 'img',
      'aria-label': sentence,
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      'font-family': 'var(--sans)',
      'font-size': 12,
      fill: 'var(--ink)',
    },
    ...children,
  );
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  return text.replace(/[&<>"]/gu, (c) => entities[c] ?? c);
}

/** The picture as SVG text; whatever stands in attributes and texts is escaped. */
export function drawingText(drawing: Drawing | string): string {
  if (typeof drawing === 'string') return escaped(drawing);
  const { tag, attributes, children } = drawing;
  const written = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('');
  return `<${tag}${written}>${children.map(drawingText).join('')}</${tag}>`;
}

/** A coordinate as it is written: a tenth of a pixel. */
export function px(value: number): string {
  const text = value.toFixed(1);
  return text.endsWith('.0') ? text.slice(0, -2) : text;
}

/** A path through points, in pixels. */
export function pathThrough(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
}

/** The picture with its tokens resolved, for a file that stands without the page's style sheet. */
export function inked(drawing: Drawing, ink: (token: string) => string): Drawing {
  const resolve = (value: string | number) =>
    typeof value === 'string'
      ? value.replace(/var\((--[\w-]+)\)/gu, (_, token: string) => ink(token))
      : value;
  return {
    tag: drawing.tag,
    attributes: Object.fromEntries(Object.entries(drawing.attributes).map(([k, v]) => [k, resolve(v)])),
    children: drawing.children.map((c) => (typeof c === 'string' ? c : inked(c, ink))),
  };
}

/** Pictures of one width under each other as one; it is told by the first. */
export function stacked(pictures: readonly Drawing[]): Drawing {
  const [first] = pictures;
  let height = 0;
  const parts = pictures.map((p) => {
    const part = draw('g', { transform: `translate(0 ${height})` }, ...p.children);
    height += Number(p.attributes.height);
    return part;
  });
  return picture(
    Number(first?.attributes.width ?? 0),
    height,
    String(first?.attributes['aria-label'] ?? ''),
    parts,
  );
}

/** A key: each colour with its name, a patch for an area, a stroke for a line. */
export function keyRow(
  width: number,
  left: number,
  items: readonly {
    readonly label: string;
    readonly colour: string;
    readonly look: 'area' | 'line' | 'dashed';
  }[],
): Drawing {
  let x = left;
  const parts = items.flatMap(({ label, colour, look }) => {
    const at = x;
    x += 40 + 6.8 * label.length;
    const sample =
      look === 'area'
        ? draw('rect', { x: at, y: 5, width: 10, height: 10, fill: colour })
        : draw('line', {
            x1: at,
            x2: at + 16,
            y1: 10,
            y2: 10,
            stroke: colour,
            'stroke-width': 2,
            'stroke-dasharray': look === 'dashed' ? '5 4' : null,
          });
    return [sample, draw('text', { x: at + (look === 'area' ? 16 : 22), y: 14 }, label)];
  });
  return picture(width, 22, items.map((i) => i.label).join(', '), parts);
}

/** The picture on a ground of its own, under a title and over a line that says which flight it is of. */
export function captioned(drawing: Drawing, title: string, note: string, caption: string): Drawing {
  const margin = 16;
  const head = title === '' ? 0 : 26;
  const width = Number(drawing.attributes.width) + 2 * margin;
  const height = Number(drawing.attributes.height) + head + 26 + 2 * margin;
  const { 'aria-label': sentence = '' } = drawing.attributes;
  return picture(
    width,
    height,
    String(sentence),
    draw('rect', { width, height, fill: 'var(--sheet)' }),
    title === ''
      ? null
      : draw(
          'text',
          { x: margin, y: margin + 14, 'font-size': 13, 'font-weight': 650 },
          title,
          draw('tspan', { 'font-weight': 400, fill: 'var(--muted)' }, ` ${note}`),
        ),
    draw('g', { transform: `translate(${margin} ${margin + head})` }, ...drawing.children),
    draw('text', { x: margin, y: height - margin, fill: 'var(--muted)' }, caption),
  );
}

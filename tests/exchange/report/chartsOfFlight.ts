import { readFileSync } from 'node:fs';
import type { Drawing } from '../../../src/exchange/report/drawing.ts';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import type { Analysis } from '../../../src/review/types.ts';

const made = new Map<string, Promise<Analysis>>();

/** The review of a sample flight, made once for all tests of a file. */
export function sampleAnalysis(name: string): Promise<Analysis> {
  const known = made.get(name);
  if (known !== undefined) return known;
  const analysis = reviewFlight({
    log: { name: `${name}.csv`, bytes: readFileSync(`sample-logs/${name}.csv`) },
    card: { name: `${name}.mission.json`, text: readFileSync(`sample-logs/${name}.mission.json`, 'utf8') },
  });
  made.set(name, analysis);
  return analysis;
}

/** Every element of a picture. */
export function elements(drawing: Drawing | string | null): Drawing[] {
  if (drawing === null || typeof drawing === 'string') return [];
  return [drawing, ...drawing.children.flatMap(elements)];
}

/** Every text of a picture with its place. */
export function texts(drawing: Drawing | null): { text: string; x: number; y: number; anchor: string }[] {
  return elements(drawing)
    .filter((e) => e.tag === 'text')
    .map((e) => ({
      text: e.children.map((c) => (typeof c === 'string' ? c : c.children.join(''))).join(''),
      x: Number(e.attributes.x),
      y: Number(e.attributes.y),
      anchor: String(e.attributes['text-anchor'] ?? 'start'),
    }));
}

/** Pairs of texts that lie over each other, at 6.2 px a letter and 12 px a line. */
export function overlaps(drawing: Drawing | null): string[] {
  const boxes = texts(drawing).map(({ text, x, y, anchor }) => {
    const wide = 6.2 * text.length;
    const left = anchor === 'end' ? x - wide : anchor === 'middle' ? x - wide / 2 : x;
    return { text, left, right: left + wide, y };
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => Math.abs(a.y - b.y) < 11 && a.left < b.right && b.left < a.right)
      .map((b) => `${a.text} / ${b.text}`),
  );
}

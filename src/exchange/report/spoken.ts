import type { ShownUnits } from '../../units/unitSets.ts';
import type { Drawing } from './drawing.ts';

/** A part's sentences in the units chosen; pictures are drawn in them, and the log's own words stay. */
export function spoken(part: Drawing, units: ShownUnits): Drawing {
  if (part.tag === 'svg' || part.attributes.translate === 'no') return part;
  const children = part.children.map((c) => (typeof c === 'string' ? units.text(c) : spoken(c, units)));
  return { ...part, children };
}

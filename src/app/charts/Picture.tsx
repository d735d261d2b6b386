import { h, type VNode } from 'preact';
import type { Drawing } from '../../exchange/report/drawing.ts';

function nodeOf(drawing: Drawing | string): VNode | string {
  if (typeof drawing === 'string') return drawing;
  return h(drawing.tag, { ...drawing.attributes }, ...drawing.children.map(nodeOf));
}

/** A picture of the engine on the page. Its texts stay texts. */
export function Picture({ drawing }: { readonly drawing: Drawing }) {
  return nodeOf(drawing);
}

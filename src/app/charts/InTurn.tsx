import type { ComponentChildren } from 'preact';
import { useTurn } from './useTurn.ts';

/** Drawn in a task of its own after what stands before it, so that the page answers in between. */
export function InTurn({ children }: { readonly children: ComponentChildren }) {
  return useTurn(true) ? children : null;
}

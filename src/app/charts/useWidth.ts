import { useLayoutEffect, useState } from 'preact/hooks';
import { paperWidth_px, printing } from './printing.ts';

/**
 * Width of an element in CSS pixels, followed as it changes; 0 before it is laid out.
 * @param paper_px its width on paper
 */
export function useWidth(
  element: { readonly current: HTMLElement | null },
  paper_px: number = paperWidth_px,
): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return;
    setWidth(Math.floor(node.clientWidth));
    const observer = new ResizeObserver(() => {
      if (!printing.peek()) setWidth(Math.floor(node.clientWidth));
    });
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return printing.value ? paper_px : width;
}

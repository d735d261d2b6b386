import { useLayoutEffect, useState } from 'preact/hooks';
import { paperWidth_px, printing } from './printing.ts';

/** Width of an element in CSS pixels, followed as it changes; 0 before it is laid out; on paper the paper's. */
export function useWidth(element: { readonly current: HTMLElement | null }): number {
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
  return printing.value ? paperWidth_px : width;
}

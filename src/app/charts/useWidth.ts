import { useLayoutEffect, useState } from 'preact/hooks';

/** Width of an element in CSS pixels, followed as it changes; 0 before it is laid out. */
export function useWidth(element: { readonly current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return;
    setWidth(Math.floor(node.clientWidth));
    const observer = new ResizeObserver(() => setWidth(Math.floor(node.clientWidth)));
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

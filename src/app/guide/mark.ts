/**
 * Marks the first element that fits and scrolls to it; where the page has not drawn it yet, as soon as it stands.
 * @param at a selector
 * @param block where in the window it is brought to; null = the reader stays where they are
 * @returns takes the mark away again, and waits no longer
 */
export function mark(at: string, block: 'center' | 'start' | null): () => void {
  let target: Element | null = null;
  const watch = new MutationObserver(find);
  function find(): void {
    target = document.querySelector(at);
    if (target === null) return;
    watch.disconnect();
    target.setAttribute('data-pointed', '');
    if (block === null) return;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    target.scrollIntoView({ block, behavior: still ? 'auto' : 'smooth' });
  }
  watch.observe(document.body, { childList: true, subtree: true });
  find();
  return () => {
    watch.disconnect();
    target?.removeAttribute('data-pointed');
  };
}

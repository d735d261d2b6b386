import type { VNode } from 'preact';
import { useState } from 'preact/hooks';

/** On a narrow screen tables keep figure and unit; the button shows the rest. Elsewhere the button is not there. */
export function useMore(): { readonly className: string; readonly button: VNode } {
  const [more, setMore] = useState(false);
  return {
    className: more ? 'with-more' : '',
    button: (
      <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
        Intervals and basis
      </button>
    ),
  };
}

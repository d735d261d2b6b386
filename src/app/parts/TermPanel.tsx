import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Term } from '../terms.ts';

interface Shown {
  readonly terms: readonly Term[];
  readonly title: string;
  /** What was pressed: the panel stands under it, and the focus goes back to it. */
  readonly from: HTMLElement;
}

/** What the panel explains now. */
export const explained = signal<Shown | null>(null);

const gap_px = 6;
const edge_px = 12;

/** Under what was pressed, or above it where there is no room; on a narrow screen the style holds it at the foot. */
function place(panel: HTMLElement, from: HTMLElement): void {
  const at = from.getBoundingClientRect();
  const { width, height } = panel.getBoundingClientRect();
  const left = Math.max(edge_px, Math.min(at.left, innerWidth - width - edge_px));
  const under = at.bottom + gap_px;
  const top = under + height + edge_px < innerHeight ? under : Math.max(edge_px, at.top - gap_px - height);
  panel.style.setProperty('--left', `${left}px`);
  panel.style.setProperty('--top', `${top}px`);
}

/** The one panel in which terms are explained. Escape, or a press elsewhere, closes it. */
export function TermPanel() {
  const panel = useRef<HTMLDivElement>(null);
  const now = explained.value;
  useEffect(() => {
    const box = panel.current;
    if (box === null || now === null) return;
    box.showPopover();
    place(box, now.from);
    box.focus();
    const closed = (event: Event) => {
      if ((event as ToggleEvent).newState !== 'closed') return;
      explained.value = null;
      if (box.contains(document.activeElement) || document.activeElement === document.body) now.from.focus();
    };
    box.addEventListener('beforetoggle', closed);
    return () => box.removeEventListener('beforetoggle', closed);
  }, [now]);
  return (
    <div
      ref={panel}
      popover="auto"
      class="term-panel"
      role="dialog"
      tabIndex={-1}
      aria-label={now === null ? 'Terms' : now.title === '' ? now.terms[0]?.name : `Terms of ${now.title}`}
    >
      {now === null ? null : (
        <>
          <dl>
            {now.terms.map((t) => (
              <div key={t.name}>
                <dt>{t.name}</dt>
                <dd>
                  {t.text}
                  {t.formula === '' ? null : <span class="formula">{t.formula}</span>}
                </dd>
              </div>
            ))}
          </dl>
          <button type="button" class="plain" onClick={() => panel.current?.hidePopover()}>
            Close
          </button>
        </>
      )}
    </div>
  );
}

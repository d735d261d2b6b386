import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type Term as Explained, termOf, terms } from '../terms.ts';

interface Shown {
  readonly terms: readonly Explained[];
  readonly title: string;
  /** What was pressed: the panel stands under it, and the focus goes back to it. */
  readonly from: HTMLElement;
}

const shown = signal<Shown | null>(null);

/**
 * A label of the page; where it is a term, pressing it explains it. The keyboard's way is the button of the section
 * (`TermsButton`), so that a table of figures does not take twenty presses of Tab.
 */
export function Term({ label }: { readonly label: string }) {
  const term = termOf(label);
  if (term === null) return <>{label}</>;
  return (
    <button
      type="button"
      class="term"
      tabIndex={-1}
      onClick={(event) => {
        shown.value = { terms: [term], title: '', from: event.currentTarget };
      }}
    >
      {label}
    </button>
  );
}

/** Explains all terms of a section. */
export function TermsButton({ of, labels }: { readonly of: string; readonly labels: readonly string[] }) {
  const found = terms.filter((t) => labels.some((label) => termOf(label) === t));
  if (found.length === 0) return null;
  return (
    <button
      type="button"
      class="plain terms-button"
      aria-haspopup="dialog"
      onClick={(event) => {
        shown.value = { terms: found, title: of, from: event.currentTarget };
      }}
    >
      Terms<span class="unseen"> of {of}</span>
    </button>
  );
}

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
  const now = shown.value;
  useEffect(() => {
    const box = panel.current;
    if (box === null || now === null) return;
    box.showPopover();
    place(box, now.from);
    box.focus();
    const closed = (event: Event) => {
      if ((event as ToggleEvent).newState !== 'closed') return;
      shown.value = null;
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

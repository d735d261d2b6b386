import { termOf, terms } from '../terms.ts';
import { explained } from './TermPanel.tsx';

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
        explained.value = { terms: [term], title: '', from: event.currentTarget };
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
        explained.value = { terms: found, title: of, from: event.currentTarget };
      }}
    >
      Terms<span class="unseen"> of {of}</span>
    </button>
  );
}

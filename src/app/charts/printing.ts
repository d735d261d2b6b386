import { signal } from '@preact/signals';
import { options } from 'preact';
import { theme } from '../theme.ts';

/** Width that charts are drawn for on paper, px: A4 and Letter less their margins, at 96 px an inch. */
export const paperWidth_px = 680;

/** Width of the path on paper, px, where the orbit stands beside it (print.css). */
export const paperPath_px = 436;

/** True while the page is laid out for paper: charts are drawn as pictures, for its width, in light colours. */
export const printing = signal(false);

/** The browser lays paper out right after `beforeprint`: what changes for it must be rendered at once. */
function atOnce(change: () => void): void {
  const usual = options.debounceRendering;
  options.debounceRendering = (render) => render();
  change();
  if (usual === undefined) delete options.debounceRendering;
  else options.debounceRendering = usual;
}

/** Opens what a report tells in full; what was closed is closed again. */
function openNotes(open: boolean): void {
  for (const notes of document.querySelectorAll<HTMLDetailsElement>('.provenance details')) {
    if (open && !notes.open) {
      notes.open = true;
      notes.dataset.forPaper = '';
    } else if (!open && notes.dataset.forPaper !== undefined) {
      notes.open = false;
      delete notes.dataset.forPaper;
    }
  }
}

/** Keeps the document ready for paper. Called once. */
export function followPrinting(): void {
  addEventListener('beforeprint', () =>
    atOnce(() => {
      document.documentElement.dataset.theme = 'light';
      printing.value = true;
      openNotes(true);
    }),
  );
  addEventListener('afterprint', () =>
    atOnce(() => {
      document.documentElement.dataset.theme = theme.peek();
      printing.value = false;
      openNotes(false);
    }),
  );
}

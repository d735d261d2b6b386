import { useId, useRef } from 'preact/hooks';
import { broken, check, setText, text } from './cardState.ts';

/** Puts the caret into a line of the text. */
function goToLine(area: HTMLTextAreaElement, row: number): void {
  const lines = area.value.split('\n');
  const start = lines.slice(0, row - 1).reduce((sum, line) => sum + line.length + 1, 0);
  area.focus();
  area.setSelectionRange(start, start + (lines[row - 1]?.length ?? 0));
}

/** The card as the text that is saved; what is written here stands in the form at once. */
export function CardTextSide() {
  const area = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  const fault = check.value?.faults.find((f) => f.row !== null);
  return (
    <section class="card-text" aria-label="Mission card as text">
      <label for={id} class="heading">
        The card as text <span class="quiet">JSON, in SI units and degrees</span>
      </label>
      <textarea
        id={id}
        ref={area}
        spellcheck={false}
        autocomplete="off"
        autocapitalize="off"
        wrap="off"
        rows={Math.min(40, Math.max(14, text.value.split('\n').length + 1))}
        value={text.value}
        aria-invalid={broken.value ? true : undefined}
        aria-describedby={broken.value ? `${id}-note` : undefined}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <div id={`${id}-note`}>
        {broken.value ? (
          <p class="entry-note fault">
            {fault?.text ?? 'This is no JSON object yet.'} The form waits until it is.{' '}
            {fault?.row ? (
              <button
                type="button"
                class="plain strong"
                onClick={() => area.current !== null && goToLine(area.current, fault.row ?? 1)}
              >
                Go to line {fault.row}
              </button>
            ) : null}
          </p>
        ) : null}
      </div>
    </section>
  );
}

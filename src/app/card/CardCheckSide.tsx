import { check } from './cardState.ts';

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="plain-list">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

/** What the engine's reader says of the card: faults, or what is understood and what is missing at what cost. */
export function CardCheckSide() {
  const said = check.value;
  const faults = said?.faults ?? [];
  return (
    <section aria-label="Check" class="card-check">
      <h2>
        Check <span class="quiet">by the reader that reviews use</span>
      </h2>
      <p role="status" class={faults.length === 0 ? '' : 'short'}>
        {said === null
          ? 'Reading the card …'
          : faults.length === 0
            ? said.missing.length === 0
              ? 'The card is right and complete.'
              : `The card is right. ${said.missing.length} ${said.missing.length === 1 ? 'thing is' : 'things are'} missing.`
            : `${faults.length} ${faults.length === 1 ? 'value has' : 'values have'} to be mended.`}
      </p>
      <Lines title="To mend" lines={faults.map((f) => f.text)} />
      <Lines title="Missing, and what that costs" lines={said?.missing ?? []} />
      <Lines title="Understood" lines={said?.understood ?? []} />
    </section>
  );
}

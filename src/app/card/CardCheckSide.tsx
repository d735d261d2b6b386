import { SaidList } from '../parts/SaidList.tsx';
import { check } from './cardState.ts';

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
      <SaidList title="To mend" lines={faults.map((f) => f.text)} />
      <SaidList title="Missing, and what that costs" lines={said?.missing ?? []} />
      <SaidList title="Understood" lines={said?.understood ?? []} />
    </section>
  );
}

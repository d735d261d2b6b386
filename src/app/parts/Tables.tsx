import { useState } from 'preact/hooks';
import type { FrameName, Review } from '../../review/types.ts';
import { seeking } from '../state.ts';
import { BudgetTable } from './BudgetTable.tsx';
import { BurnsTable } from './BurnsTable.tsx';
import { EventsTable, eventsAreMany } from './EventsTable.tsx';
import { Findings } from './Findings.tsx';
import { LedgerTable } from './LedgerTable.tsx';
import { OrbitTable } from './OrbitTable.tsx';

/**
 * Ledger and findings side by side, the further tables under them, as the width allows. On a narrow screen they
 * keep figure and unit until asked for more.
 */
export function Tables({ review, frame }: { readonly review: Review; readonly frame: FrameName }) {
  const [more, setMore] = useState(false);
  // Room is kept for findings while they are sought, so that what is read does not move away.
  const found = review.findings.length > 0 || review.whyNot !== null || seeking.value;
  const many = eventsAreMany(review);
  // What would have reached orbit takes about as much room as two findings.
  const told = review.findings.length + (review.whyNot === null ? 0 : 2);
  // As much as the ledger and the burns; as little as leaves room for the budget beside the ledger.
  const much = found && (seeking.value || told > 2);
  const little = found && !much && told <= 1;
  return (
    <div class={more ? 'tables with-more' : 'tables'}>
      <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
        Intervals and basis
      </button>
      <div class="pair told-first">
        <LedgerTable review={review} frame={frame} />
        <div class={much ? 'beside-two' : ''}>
          {found ? <Findings review={review} /> : null}
          {found && !little ? null : <BudgetTable review={review} />}
          {much || little ? null : <BurnsTable review={review} />}
        </div>
        {much ? <BurnsTable review={review} /> : null}
      </div>
      <div class="pair">
        <div>
          {found && !little ? <BudgetTable review={review} /> : <OrbitTable review={review} />}
          {found && !little && !many ? <OrbitTable review={review} /> : null}
          {little && !many ? <BurnsTable review={review} /> : null}
        </div>
        <div>
          {many ? null : <EventsTable review={review} />}
          {found && !little && many ? <OrbitTable review={review} /> : null}
          {little && many ? <BurnsTable review={review} /> : null}
        </div>
      </div>
      {many ? <EventsTable review={review} /> : null}
    </div>
  );
}

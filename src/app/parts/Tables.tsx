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
  // Beside the ledger there is room for about four findings, or fewer and the burns.
  const few = review.findings.length <= 2;
  return (
    <div class={more ? 'tables with-more' : 'tables'}>
      <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
        Intervals and basis
      </button>
      <div class="pair">
        <LedgerTable review={review} frame={frame} />
        <div>
          {found ? <Findings review={review} /> : <BudgetTable review={review} />}
          {few ? <BurnsTable review={review} /> : null}
        </div>
      </div>
      <div class="pair">
        <div>
          {found ? <BudgetTable review={review} /> : null}
          {found && many ? null : <OrbitTable review={review} />}
        </div>
        <div>
          {many ? null : <EventsTable review={review} />}
          {found && many ? <OrbitTable review={review} /> : null}
          {few ? null : <BurnsTable review={review} />}
        </div>
      </div>
      {many ? <EventsTable review={review} /> : null}
    </div>
  );
}

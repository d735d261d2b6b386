import { useState } from 'preact/hooks';
import type { FrameName, Review } from '../../review/types.ts';
import { BudgetTable } from './BudgetTable.tsx';
import { EventsTable } from './EventsTable.tsx';
import { LedgerTable } from './LedgerTable.tsx';
import { OrbitTable } from './OrbitTable.tsx';

/** The tables side by side as the width allows. On a narrow screen they keep figure and unit until asked for more. */
export function Tables({ review, frame }: { readonly review: Review; readonly frame: FrameName }) {
  const [more, setMore] = useState(false);
  return (
    <div class={more ? 'tables with-more' : 'tables'}>
      <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
        Intervals and basis
      </button>
      <LedgerTable review={review} frame={frame} />
      <BudgetTable review={review} />
      <OrbitTable review={review} />
      <EventsTable review={review} />
    </div>
  );
}

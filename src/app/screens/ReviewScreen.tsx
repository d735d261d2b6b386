import { Hero } from '../charts/Hero.tsx';
import { LedgerBar } from '../charts/LedgerBar.tsx';
import { StripSheet } from '../charts/StripSheet.tsx';
import { Findings } from '../parts/Findings.tsx';
import { Provenance } from '../parts/Provenance.tsx';
import { Tables } from '../parts/Tables.tsx';
import { Verdict } from '../parts/Verdict.tsx';
import { route } from '../route.ts';
import { current } from '../state.ts';

/** One flight's review: verdict, bar and margin first; a reader who stops there knows the answer. */
export function ReviewScreen() {
  const open = current.value;
  if (open === null) return null;
  const { analysis } = open;
  const { review } = analysis;
  const frame = route.value.view.frame === 'inertial' ? 'inertial' : 'ground';
  return (
    <>
      <Verdict review={review} />
      <LedgerBar entries={review.ledger[frame]} frame={frame} end_s={review.ledger.end_s} />
      <Hero analysis={analysis} />
      <Findings review={review} />
      <Tables review={review} frame={frame} />
      <StripSheet analysis={analysis} />
      <Provenance review={review} />
    </>
  );
}

import { untilText } from '../../exchange/readingText.ts';
import { Hero } from '../charts/Hero.tsx';
import { InTurn } from '../charts/InTurn.tsx';
import { LedgerBar } from '../charts/LedgerBar.tsx';
import { OrbitPanel } from '../charts/OrbitPanel.tsx';
import { PathPanel } from '../charts/PathPanel.tsx';
import { StripSheet } from '../charts/StripSheet.tsx';
import { FlightChoices } from '../parts/FlightChoices.tsx';
import { OtherFlight } from '../parts/OtherFlight.tsx';
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
      <Verdict analysis={analysis} />
      <FlightChoices />
      <LedgerBar entries={review.ledger[frame]} frame={frame} until={untilText(review)} />
      <Hero analysis={analysis} />
      <OtherFlight />
      <InTurn>
        <Tables review={review} frame={frame} />
      </InTurn>
      <InTurn>
        <StripSheet analysis={analysis} />
      </InTurn>
      <InTurn>
        <div class="shapes">
          <PathPanel analysis={analysis} />
          <OrbitPanel analysis={analysis} />
        </div>
      </InTurn>
      <InTurn>
        <Provenance review={review} />
      </InTurn>
    </>
  );
}

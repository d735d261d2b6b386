import { numberText, shown, valueText } from '../../exchange/figureText.ts';
import { spanText } from '../../exchange/readingText.ts';
import { unbroken } from '../../exchange/sentence.ts';
import type { Finding, Review } from '../../review/types.ts';
import { chooseFinding, chosenFinding } from '../charts/timeFrame.ts';
import { seeking } from '../state.ts';
import { inUnits, speedIn } from '../units.ts';

function FindingItem({ finding, place }: { readonly finding: Finding; readonly place: number }) {
  const chosen = chosenFinding.value === place;
  const { cost_m_s, propellant_kg } = finding;
  const speed = speedIn();
  return (
    <li class={chosen ? 'chosen' : ''}>
      <div class="finding-head">
        <button
          type="button"
          class="finding-title"
          aria-pressed={chosen}
          onClick={() => chooseFinding(chosen ? null : place)}
        >
          {unbroken(inUnits(finding.text))}
          <span class="unseen"> (frame this stretch in all charts)</span>
        </button>
        {cost_m_s.value === null ? null : (
          <span class="finding-cost">
            {valueText(cost_m_s, shown(cost_m_s, speed.scale))} {speed.unit}
          </span>
        )}
      </div>
      <p class="finding-place">
        {spanText(finding.start_s, finding.end_s)}
        {propellant_kg.value === null ? '' : `, worth ${numberText(propellant_kg.value, 0)} kg of propellant`}
      </p>
      <p>{unbroken(inUnits(`${finding.evidence} ${finding.advice}`))}</p>
    </li>
  );
}

/** Why it is not in orbit, and the smallest changes that would have brought it there, proved by flying them. */
function ReachedOrbit({ whyNot }: { readonly whyNot: NonNullable<Review['whyNot']> }) {
  return (
    <>
      <h2>What would have reached orbit</h2>
      <p>{unbroken(inUnits(whyNot.text))}</p>
      {whyNot.changes.length < 2 ? null : (
        <ul class="plain-list">
          {whyNot.changes.slice(1).map((change) => (
            <li key={change.kind}>or {unbroken(inUnits(change.text))}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** What cost most, ranked; choosing one frames its stretch in every chart. Not there while nothing was found and nothing is sought. */
export function Findings({ review }: { readonly review: Review }) {
  const { findings, whyNot } = review;
  const sought = seeking.value;
  if (findings.length === 0 && whyNot === null && !sought) return null;
  return (
    <section class="findings" aria-label="Findings">
      {findings.length === 0 && !sought ? null : (
        <h2>
          What cost most{' '}
          <span class="quiet">
            {sought ? 'flying it again to find out …' : 'choose one to frame it in every chart'}
          </span>
        </h2>
      )}
      {sought && findings.length === 0 ? (
        <p>The same rocket is flown again with one thing changed at a time, which takes some seconds.</p>
      ) : null}
      {findings.length === 0 ? null : (
        <ol>
          {findings.map((f, i) => (
            <FindingItem key={`${f.code} ${f.start_s}`} finding={f} place={i} />
          ))}
        </ol>
      )}
      {whyNot === null ? null : <ReachedOrbit whyNot={whyNot} />}
    </section>
  );
}

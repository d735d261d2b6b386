import { useState } from 'preact/hooks';
import { numberText, shown, valueText } from '../../exchange/figureText.ts';
import { unbroken } from '../../exchange/sentence.ts';
import type { Review } from '../../review/types.ts';
import { timeText } from '../figureText.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { Joined } from '../parts/Joined.tsx';
import { current } from '../state.ts';
import { inUnits, speedIn } from '../units.ts';
import { EntryPanels } from '../wayDown/EntryPanels.tsx';
import { OrbitBurns, OrbitHistory } from '../wayDown/OrbitWorkTables.tsx';
import { type WayDownSection, wayDownSections } from '../wayDown/wayDownLines.ts';

/** Findings whose stretch lies after the ascent. */
function LaterFindings({ review }: { readonly review: Review }) {
  const later = review.findings.filter((f) => f.start_s >= review.ledger.end_s);
  const speed = speedIn();
  if (later.length === 0) return null;
  return (
    <section class="findings" aria-label="Findings after the ascent">
      <h2>
        What to do better <span class="quiet">after the ascent</span>
      </h2>
      <ol>
        {later.map((f) => (
          <li key={`${f.code} ${f.start_s}`}>
            <div class="finding-head">
              <strong>{unbroken(inUnits(f.text))}</strong>
              {f.cost_m_s.value === null ? null : (
                <span class="finding-cost">
                  {valueText(f.cost_m_s, shown(f.cost_m_s, speed.scale))} {speed.unit}
                </span>
              )}
            </div>
            <p class="finding-place">
              {timeText(f.start_s)} to {timeText(f.end_s)}
              {f.propellant_kg.value === null
                ? ''
                : `, worth ${numberText(f.propellant_kg.value, 0)} kg of propellant`}
            </p>
            <p>{unbroken(inUnits(`${f.evidence} ${f.advice}`))}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What stands on the left, above the curves; entry and what follows it on the right. */
const early: ReadonlySet<string> = new Set(['Deorbit burn', 'Fall predicted and logged']);

function Sections({ of }: { readonly of: readonly WayDownSection[] }) {
  return (
    <>
      {of.map(({ title, note, lines }) => (
        <section key={title} aria-label={title}>
          <h2>
            {title} <span class="quiet">{unbroken(note)}</span>
          </h2>
          <FigureTable lines={lines} />
        </section>
      ))}
    </>
  );
}

function burnsWord({ orbitWork }: Review): string {
  const count = orbitWork.burns.length;
  return count === 1 ? 'One burn' : `${count} burns`;
}

/** Work in orbit and the way back down, as far as the log shows them. */
export function WayDownScreen() {
  const [more, setMore] = useState(false);
  const open = current.value;
  if (open === null) return null;
  const { review } = open.analysis;
  const way = review.return;
  const sections = wayDownSections(way);
  // Tables begin at the left where nothing came before them.
  const onlyLate = sections.every((s) => !early.has(s.title));
  const worked = review.orbitWork.burns.length > 0;
  if (sections.length === 0 && !worked) {
    return (
      <div class="further way-screen">
        <p class="context">{open.source.title}</p>
        <h1 tabIndex={-1}>The log holds no way down.</h1>
        <p class="detail">
          It ends at {timeText(review.source.end_s)}, before any burn in orbit, entry or landing. A log that
          runs on shows here what each burn in orbit took, the entry, the parachutes and the touchdown.
        </p>
      </div>
    );
  }
  return (
    <div class="further way-screen">
      <p class="context">
        <Joined text={open.source.title} />
      </p>
      <h1 tabIndex={-1}>
        {sections.length === 0
          ? `${burnsWord(review)} in orbit; the log holds no way down.`
          : unbroken(inUnits(way.text))}
      </h1>
      <div class={more ? 'tables with-more' : 'tables'}>
        <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
          Intervals and basis
        </button>
        {sections.length === 0 ? null : (
          <div class="pair way-sections">
            <div>
              <Sections of={onlyLate ? sections : sections.filter((s) => early.has(s.title))} />
              {onlyLate ? null : <EntryPanels analysis={open.analysis} />}
            </div>
            <div>
              {onlyLate ? (
                <EntryPanels analysis={open.analysis} />
              ) : (
                <Sections of={sections.filter((s) => !early.has(s.title))} />
              )}
            </div>
          </div>
        )}
        <LaterFindings review={review} />
        {worked ? <OrbitBurns work={review.orbitWork} /> : null}
        {worked ? <OrbitHistory work={review.orbitWork} /> : null}
      </div>
    </div>
  );
}

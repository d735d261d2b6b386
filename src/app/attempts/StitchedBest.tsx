import type { Comparison, Stitched, StitchedPhase } from '../../attempts/types.ts';
import { stitchedNote } from '../../exchange/comparisonWords.ts';
import { numberText } from '../../exchange/figureText.ts';
import { unbroken } from '../../exchange/sentence.ts';
import { Joined } from '../parts/Joined.tsx';
import { inUnits, shownIn, speedIn } from '../units.ts';

type Flown = Extract<Stitched, { kind: 'flown' }>;

/** The best phases of each group put together and flown: what they leave, and where they do not join. */
export function StitchedBest({ comparison }: { readonly comparison: Comparison }) {
  const { stitched } = comparison;
  if (stitched.length === 0) return null;
  const flown = stitched.filter((s): s is Flown => s.kind === 'flown');
  return (
    <section aria-label="Best phases flown one after another">
      <h2>
        Best phases flown one after another <span class="quiet">the “stitched best”</span>
      </h2>
      <ul class="plain-list told-list">
        {stitched.map((s) => (
          <li key={s.group}>{unbroken(inUnits(s.text))}</li>
        ))}
      </ul>
      {flown.length === 0 ? null : <PhaseTable flown={flown} />}
      <p class="quiet stitched-note">{stitchedNote}</p>
    </section>
  );
}

function PhaseTable({ flown }: { readonly flown: readonly Flown[] }) {
  const speed = speedIn();
  const height = shownIn('km', 1e-3);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="wide" aria-label="Table of stitched phases" tabIndex={0}>
      <table class="figures stitched-table">
        <thead>
          <tr>
            <th scope="col">phase</th>
            <th scope="col">flown as by</th>
            <th scope="col" class="number">
              there <span class="unit">{speed.unit}</span>
            </th>
            <th scope="col" class="number">
              here <span class="unit">{speed.unit}</span>
            </th>
            <th scope="col" class="number">
              altitude gap <span class="unit">{height.unit}</span>
            </th>
            <th scope="col" class="number">
              speed gap <span class="unit">{speed.unit}</span>
            </th>
            <th scope="col" class="number">
              path angle gap <span class="unit">°</span>
            </th>
            <th scope="col">joins</th>
          </tr>
        </thead>
        {flown.map((s) => (
          <tbody key={s.group}>
            <tr class="group-line">
              <th scope="rowgroup" colSpan={8}>
                {s.group}
              </th>
            </tr>
            {s.phases.map((p) => (
              <tr key={p.label}>
                <th scope="row">{p.label}</th>
                <td>
                  <Joined text={p.name} />
                </td>
                <td class="number">{numberText(p.own_m_s * speed.scale, 0)}</td>
                <td class="number strong-cell">{numberText(p.stitched_m_s * speed.scale, 0)}</td>
                <Gap phase={p} height={height.scale} speed={speed.scale} />
                <td>{p.gap === null ? '' : p.joins ? 'yes' : 'no'}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

function Gap({ phase: { gap }, height, speed }: { phase: StitchedPhase; height: number; speed: number }) {
  if (gap === null) return <td colSpan={3} />;
  return (
    <>
      <td class="number">{numberText(gap.altitude_m * height, 1)}</td>
      <td class="number">{numberText(gap.speed_m_s * speed, 0)}</td>
      <td class="number">{numberText(gap.flightPathAngle_deg, 1)}</td>
    </>
  );
}

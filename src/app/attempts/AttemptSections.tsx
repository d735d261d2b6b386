import { habitNames, habitWords } from '../../attempts/habitRelations.ts';
import type { Comparison, HabitName } from '../../attempts/types.ts';
import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import { inUnits, shownIn, speedIn } from '../units.ts';

const habitUnits: Readonly<Record<HabitName, readonly [unit: string, decimals: number]>> = {
  pitchOverTime_s: ['s', 1],
  pitchOverAngle_deg: ['°', 1],
  thrustToWeightAtMaxQ: ['', 2],
  angleOfAttackInAir_deg: ['°', 2],
  cutoffError_m_s: ['m/s', 1],
};

/** Most rows of the list of partings before it is asked for more. */
const mostPartings = 12;

/** Where each attempt's way parts from the reference, dearest first, and what that cost. */
export function Partings({ comparison }: { readonly comparison: Comparison }) {
  const { rows, reference } = comparison;
  const told = rows.flatMap((r) => (r.parting === null ? [] : [{ name: r.name, parting: r.parting }]));
  if (reference === null || told.length === 0) return null;
  told.sort((a, b) => (b.parting.cost_m_s.value ?? 0) - (a.parting.cost_m_s.value ?? 0));
  const speed = speedIn();
  const table = (part: typeof told, name: string) => (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="wide" aria-label={name} tabIndex={0}>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">flight</th>
            <th scope="col" class="number">
              from <span class="unit">s</span>
            </th>
            <th scope="col" class="number">
              to <span class="unit">s</span>
            </th>
            <th scope="col">after</th>
            <th scope="col" class="number">
              cost <span class="unit">{speed.unit}</span>
            </th>
            <th scope="col" class="number">
              95 %
            </th>
          </tr>
        </thead>
        <tbody>
          {part.map(({ name, parting }) => {
            const form = shown(parting.cost_m_s, speed.scale);
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td class="number">{numberText(parting.from_s, 0)}</td>
                <td class="number">{numberText(parting.to_s, 0)}</td>
                <td>{parting.after === null ? '' : eventWord(parting.after)}</td>
                <td class="number strong-cell">{valueText(parting.cost_m_s, form)}</td>
                <td class="number quiet">{intervalText(parting.cost_m_s, form)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
  return (
    <section aria-label="Where the ways part">
      <h2>
        Where the ways part{' '}
        <span class="quiet">
          from {reference.name} ({reference.why}), beyond the intervals
        </span>
      </h2>
      {table(told.slice(0, mostPartings), 'Table of partings')}
      {told.length <= mostPartings ? null : (
        <details>
          <summary>{told.length - mostPartings} more</summary>
          {table(told.slice(mostPartings), 'Table of further partings')}
        </details>
      )}
    </section>
  );
}

/** What the pilots do, with how much it varies. */
export function Habits({ comparison }: { readonly comparison: Comparison }) {
  const told = comparison.groups.filter((g) => habitNames.some((h) => g.habits[h].count > 0));
  if (told.length === 0) return null;
  return (
    <section aria-label="Habits">
      <h2>
        Habits <span class="quiet">median, and half the middle half’s width</span>
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="wide" aria-label="Table of habits" tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">{comparison.by}</th>
              {habitNames.map((h) => (
                <th key={h} scope="col" class="number">
                  {habitWords[h]} <span class="unit">{shownIn(habitUnits[h][0], 1).unit}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {told.map((g) => (
              <tr key={g.name}>
                <th scope="row">{g.name}</th>
                {habitNames.map((h) => {
                  const { median, lower, upper, count } = g.habits[h];
                  const [unit, decimals] = habitUnits[h];
                  const { scale } = shownIn(unit, 1);
                  return (
                    <td key={h} class="number">
                      {median === null ? NO_FIGURE : numberText(median * scale, decimals)}
                      {lower === null || upper === null || count < 2 ? null : (
                        <span class="quiet"> ±{numberText(((upper - lower) / 2) * scale, decimals)}</span>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function Told({ title, note, lines }: { title: string; note: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>
        {title} <span class="quiet">{note}</span>
      </h2>
      <ul class="plain-list told-list">
        {lines.map((line) => (
          <li key={line}>{inUnits(line)}</li>
        ))}
      </ul>
    </section>
  );
}

/** Whether the margin grew over the attempts, and what limits all that is said here. */
export function Progress({ comparison }: { readonly comparison: Comparison }) {
  return (
    <>
      <Told
        title="Progress"
        note="margin over the attempts in their order"
        lines={comparison.groups.map((g) => `${g.name}: ${g.progress.text}`)}
      />
      <Told title="What limits this comparison" note="" lines={comparison.cautions} />
    </>
  );
}

/** Whether groups differ on the margin, and what goes with it. */
export function Relations({ comparison }: { readonly comparison: Comparison }) {
  return (
    <>
      <Told
        title="Whether they differ"
        note="on the margin"
        lines={comparison.differences.map((d) => d.text)}
      />
      <Told title="What goes with the margin" note="" lines={comparison.habits.map((h) => h.text)} />
    </>
  );
}

/** The attempt that was cheapest in each phase. */
export function BestPhases({ comparison }: { readonly comparison: Comparison }) {
  const { bestPhases } = comparison;
  const { scale, unit } = speedIn();
  if (bestPhases.length === 0) return null;
  return (
    <section aria-label="Best in each phase">
      <h2>
        Best in each phase <span class="quiet">rise of the projected total, {unit}</span>
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="wide" aria-label="Table of best phases" tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">phase</th>
              <th scope="col">cheapest</th>
              <th scope="col" class="number">
                {unit}
              </th>
              <th scope="col" class="number">
                less than others
              </th>
            </tr>
          </thead>
          <tbody>
            {bestPhases.map((b) => (
              <tr key={b.label}>
                <th scope="row">{b.label}</th>
                <td>{b.name}</td>
                <td class="number strong-cell">{numberText(b.cost_m_s * scale, 0)}</td>
                <td class="number">
                  {b.saved_m_s === null ? NO_FIGURE : numberText(b.saved_m_s * scale, 0)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

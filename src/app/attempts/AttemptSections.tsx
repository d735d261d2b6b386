import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { habitNames, habitWords } from '../../attempts/habitRelations.ts';
import type { Comparison } from '../../attempts/types.ts';
import { habitUnits, heldText } from '../../exchange/comparisonWords.ts';
import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import { unbroken } from '../../exchange/sentence.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import { ColumnTable, type TableColumn } from '../parts/ColumnTable.tsx';
import { Joined } from '../parts/Joined.tsx';
import { inUnits, shownIn, speedIn } from '../units.ts';

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
    <ColumnTable
      scrolls={name}
      rows={part}
      keyOf={(p) => p.name}
      columns={[
        { head: 'flight', cell: (p) => <Joined text={p.name} /> },
        { head: 'from', unit: 's', kind: 'number', cell: ({ parting }) => numberText(parting.from_s, 0) },
        { head: 'to', unit: 's', kind: 'number', cell: ({ parting }) => numberText(parting.to_s, 0) },
        {
          head: 'after',
          cell: ({ parting }) => (parting.after === null ? '' : eventWord(parting.after)),
        },
        {
          head: 'cost',
          unit: speed.unit,
          kind: 'number',
          cellLook: 'strong-cell',
          cell: ({ parting }) => valueText(parting.cost_m_s, shown(parting.cost_m_s, speed.scale)),
        },
        {
          head: '95 %',
          kind: 'number',
          cellLook: 'quiet',
          cell: ({ parting }) => intervalText(parting.cost_m_s, shown(parting.cost_m_s, speed.scale)),
        },
      ]}
    />
  );
  return (
    <section aria-label="Where the ways part">
      <h2>
        Where the ways part{' '}
        <span class="quiet">
          from {unbroken(reference.name)} ({reference.why}), beyond the intervals
        </span>
      </h2>
      {table(told.slice(0, mostPartings), 'Table of partings')}
      {told.length <= mostPartings ? null : (
        <Further count={told.length - mostPartings}>
          {() => table(told.slice(mostPartings), 'Table of further partings')}
        </Further>
      )}
    </section>
  );
}

/** What is shown only when asked for, and made only then. */
function Further({ count, children }: { readonly count: number; readonly children: () => VNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{numberText(count, 0)} more</summary>
      {open ? children() : null}
    </details>
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
      <ColumnTable
        scrolls="Table of habits"
        rows={told}
        keyOf={(g) => g.name}
        columns={[
          { head: comparison.by, cell: (g) => g.name },
          ...habitNames.map((h): TableColumn<(typeof told)[number]> => {
            const [given, decimals] = habitUnits[h];
            const { unit, scale } = shownIn(given, 1);
            return {
              head: habitWords[h],
              unit,
              kind: 'number',
              cell: (g) => {
                const { median, lower, upper, count } = g.habits[h];
                return (
                  <>
                    {median === null ? NO_FIGURE : numberText(median * scale, decimals)}
                    {lower === null || upper === null || count < 2 ? null : (
                      <span class="quiet"> ±{numberText(((upper - lower) / 2) * scale, decimals)}</span>
                    )}
                  </>
                );
              },
            };
          }),
        ]}
      />
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
          <li key={line}>{unbroken(inUnits(line))}</li>
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
      <Told
        title="What limits this comparison"
        note=""
        lines={[...comparison.cautions, heldText(comparison)]}
      />
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
      <ColumnTable
        scrolls="Table of best phases"
        rows={bestPhases}
        keyOf={(b) => b.label}
        columns={[
          { head: 'phase', cell: (b) => b.label },
          { head: 'cheapest', cell: (b) => <Joined text={b.name} /> },
          {
            head: unit,
            kind: 'number',
            cellLook: 'strong-cell',
            cell: (b) => numberText(b.cost_m_s * scale, 0),
          },
          {
            head: 'less than others',
            kind: 'number',
            cell: (b) => (b.saved_m_s === null ? NO_FIGURE : numberText(b.saved_m_s * scale, 0)),
          },
        ]}
      />
    </section>
  );
}

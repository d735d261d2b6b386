import { missingChannels } from '../../exchange/missingChannels.ts';
import { sentence } from '../../exchange/sentence.ts';
import { ColumnsTable } from '../columns/ColumnsTable.tsx';
import { PartPicker } from '../columns/PartPicker.tsx';
import { UnreadLog } from '../columns/UnreadLog.tsx';
import { asking, current, type OpenFlight, reviewAgain, sayingColumns, unread } from '../state.ts';
import { inUnits } from '../units.ts';

function Notes({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul class="plain-list">
        {lines.map((line) => (
          <li key={line}>{inUnits(line)}</li>
        ))}
      </ul>
    </section>
  );
}

function heading(open: OpenFlight): string {
  const { channels } = open.analysis.review;
  const unsure = channels.filter((c) => c.confidence < 0.6).length;
  const count = `${channels.length} of ${open.columns.length} columns are used`;
  return unsure === 0 ? `${count}.` : `${count}; ${unsure} of them should be looked at.`;
}

/** How the log was understood, column by column, and how to say otherwise. */
export function ColumnsScreen() {
  const open = current.value;
  if (unread.value !== null && sayingColumns.value) {
    return (
      <div class="columns-screen">
        <UnreadLog {...unread.value} />
      </div>
    );
  }
  if (open === null) return null;
  const { review } = open.analysis;
  return (
    <div class="columns-screen">
      <h1 tabIndex={-1}>{heading(open)}</h1>
      <p class="detail">
        {review.source.file}. What you change is read anew at once, and is remembered for logs with the same
        headers.
      </p>
      <div class="card-actions">
        <PartPicker />
        {open.map.length === 0 ? null : (
          <button type="button" class="plain strong" onClick={() => void reviewAgain({ map: [] })}>
            Forget all choices and read it by its own words
          </button>
        )}
      </div>
      <ColumnsTable
        columns={open.columns}
        readings={review.channels}
        map={asking.value?.changes.map ?? open.map}
        onMap={(map) => void reviewAgain({ map })}
      />
      <div class="columns-notes">
        <Notes
          title="What was repaired, and what limits the log"
          lines={review.quality.map((q) =>
            q.rows === null || q.rows[0] === q.rows[1]
              ? q.text
              : `${q.text} (rows ${q.rows[0]} to ${q.rows[1]})`,
          )}
        />
        <Notes
          title="Channels that are missing, and what that costs"
          lines={missingChannels(review.channels).map(sentence)}
        />
      </div>
    </div>
  );
}

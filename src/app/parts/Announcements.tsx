import { sentence } from '../../exchange/sentence.ts';
import { bookTrouble } from '../book/book.ts';
import { placeText } from '../failure.ts';
import { intake, stopIntake } from '../intake.ts';
import { newerVersion } from '../offline.ts';
import { go } from '../route.ts';
import { current, job, leftAside, notice, problem, sayingColumns, stopWork, unread } from '../state.ts';
import { inUnits } from '../units.ts';
import { WorkLine } from './WorkLine.tsx';

/** What is being worked on, with the way to end it. */
function Working() {
  const coming = intake.value;
  if (coming !== null) {
    const { done, total, name, text, share } = coming;
    return total === 1 ? (
      <WorkLine title={name} text={text} share={share} onStop={stopIntake} />
    ) : (
      <WorkLine
        title={`Flight ${done + 1} of ${total}`}
        text={name}
        share={(done + (share ?? 0)) / total}
        onStop={stopIntake}
      />
    );
  }
  return job.value === null ? null : <WorkLine {...job.value} onStop={stopWork} />;
}

/** Files that could not be taken among others that could. */
function LeftAside() {
  const aside = leftAside.value;
  if (aside.length === 0) return null;
  return (
    <div class="problem">
      <p>{aside.length === 1 ? 'One file was left aside:' : `${aside.length} files were left aside:`}</p>
      <ul>
        {aside.map(({ name, failure }) => (
          <li key={name}>
            <strong>{name}</strong>: {sentence(failure.what)}
          </li>
        ))}
      </ul>
      <button
        type="button"
        class="plain"
        onClick={() => {
          leftAside.value = [];
        }}
      >
        Close<span class="unseen"> this list</span>
      </button>
    </div>
  );
}

/** What is being worked on, what went wrong, what else to know: between the navigation and the screen. */
export function Announcements() {
  // The screen that asks for the columns says what is wrong itself.
  const failed = sayingColumns.value && unread.value?.failure === problem.value ? null : problem.value;
  const kept = current.value;
  const newer = newerVersion.value;
  return (
    <div class="announcements">
      <div role="status">
        <Working />
        {notice.value === null ? null : <p class="notice">{inUnits(notice.value)}</p>}
        {newer === null ? null : (
          <p class="notice">
            A newer lossbook is here.{' '}
            <button type="button" class="plain" onClick={newer}>
              Use it now
            </button>
          </p>
        )}
      </div>
      <div role="alert">
        {bookTrouble.value === null ? null : <p class="problem">{bookTrouble.value}</p>}
        {failed === null ? null : (
          <div class="problem">
            <p>
              {placeText(failed.where) === '' ? null : <strong>{placeText(failed.where)}: </strong>}
              {sentence(failed.what)}
            </p>
            <p>{sentence(failed.next)}</p>
            {kept === null ? null : <p class="quiet">The review of {kept.source.title} is still here.</p>}
            {unread.value?.failure === failed ? (
              <button type="button" class="plain strong" onClick={() => go('columns')}>
                Say which columns they are
              </button>
            ) : null}
            <button
              type="button"
              class="plain"
              onClick={() => {
                problem.value = null;
              }}
            >
              Close<span class="unseen"> this message</span>
            </button>
          </div>
        )}
        <LeftAside />
      </div>
    </div>
  );
}

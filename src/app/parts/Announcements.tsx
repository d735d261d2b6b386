import { placeText } from '../failure.ts';
import { sentence } from '../sentence.ts';
import { current, job, notice, problem } from '../state.ts';

/** What is being worked on, what went wrong, what else to know: between the navigation and the screen. */
export function Announcements() {
  const failed = problem.value;
  const kept = current.value;
  return (
    <div class="announcements">
      <div role="status">
        {job.value === null ? null : (
          <p class="working">
            <strong>{job.value.title}</strong>: {job.value.text} …
          </p>
        )}
        {notice.value === null ? null : <p class="notice">{notice.value}</p>}
      </div>
      <div role="alert">
        {failed === null ? null : (
          <div class="problem">
            <p>
              {placeText(failed.where) === '' ? null : <strong>{placeText(failed.where)}: </strong>}
              {sentence(failed.what)}
            </p>
            <p>{sentence(failed.next)}</p>
            {kept === null ? null : <p class="quiet">The review of {kept.source.title} is still here.</p>}
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
      </div>
    </div>
  );
}

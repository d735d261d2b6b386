import { useId } from 'preact/hooks';
import { failureOf } from '../failure.ts';
import { textOf } from '../intake.ts';
import { go } from '../route.ts';
import { saveFile } from '../saveFile.ts';
import { current, job, problem, reviewAgain } from '../state.ts';
import { seekBest } from './seekBest.ts';

/** Where a plan comes from, and where it can go. */
export function PlanActions() {
  const picker = useId();
  const open = current.value;
  if (open === null) return null;
  const { plan, card } = open.files;
  const busy = job.value !== null;
  const take = async (input: HTMLInputElement) => {
    const [file] = [...(input.files ?? [])];
    input.value = '';
    if (file === undefined) return;
    try {
      await reviewAgain({ plan: await textOf(file) });
    } catch (error) {
      problem.value = failureOf(error, { file: file.name });
    }
  };
  return (
    <div class="plan-actions">
      <span class="pick">
        <input
          id={picker}
          type="file"
          accept=".csv,.tsv,.txt,.json,.gz"
          onChange={(event) => void take(event.currentTarget)}
        />
        <label class={plan === null ? 'button' : 'button lesser'} for={picker}>
          {plan === null ? 'Choose a plan' : 'Choose another plan'}
        </label>
      </span>
      <button
        type="button"
        class="plain strong"
        onClick={() => go('plan-editor', { flight: open.source.id })}
      >
        {plan === null ? 'Write a plan' : 'Edit the plan'}
      </button>
      {card === null ? (
        <button type="button" class="plain strong" onClick={() => go('card', { flight: open.source.id })}>
          Write a mission card, to search the best ascent
        </button>
      ) : (
        <button type="button" class="plain strong" disabled={busy} onClick={() => void seekBest()}>
          Search the best ascent
        </button>
      )}
      {plan === null ? null : (
        <>
          <button
            type="button"
            class="plain"
            onClick={() => saveFile(plan.name, new Blob([plan.text], { type: 'text/csv;charset=utf-8' }))}
          >
            Save the plan
          </button>
          <button type="button" class="plain" onClick={() => void reviewAgain({ plan: null })}>
            Take the plan off
          </button>
        </>
      )}
    </div>
  );
}

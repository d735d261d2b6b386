import { SaidList } from '../parts/SaidList.tsx';
import { inUnits } from '../units.ts';
import { check, checking, empty } from './editorState.ts';

/** What the engine's reader says of the plan: faults, or what is understood and what is left open. */
export function PlanCheckSide() {
  const said = check.value;
  const faults = said?.faults ?? [];
  const whole = faults.filter((f) => f.row === null);
  const state = empty.value
    ? 'Nothing stands in the rows yet.'
    : said === null || checking.value
      ? 'Reading the plan …'
      : faults.length > 0
        ? faults.length === whole.length
          ? 'The plan cannot be read yet.'
          : `${faults.length} ${faults.length === 1 ? 'cell has' : 'cells have'} to be mended; ${faults.length === 1 ? 'it is' : 'they are'} told at the row.`
        : 'The plan is right.';
  return (
    <section aria-label="Check" class="card-check">
      <h2>
        Check <span class="quiet">by the reader that reviews use</span>
      </h2>
      <p role="status" class={faults.length === 0 ? '' : 'short'}>
        {state}
      </p>
      <SaidList title="To mend" lines={whole.map((f) => f.text)} />
      <SaidList title="Understood" lines={(said?.understood ?? []).map(inUnits)} />
      <SaidList title="Left open" lines={(said?.missing ?? []).map(inUnits)} />
    </section>
  );
}

import { useId } from 'preact/hooks';
import { current, reviewAgain } from '../state.ts';

/** Which flight of a log that holds several; not there for one that holds one. */
export function PartPicker() {
  const id = useId();
  const source = current.value?.analysis.review.source;
  if (source === undefined || source.parts < 2) return null;
  return (
    <span class="pick-one">
      <label for={id}>Flight of this file</label>
      <select id={id} onChange={(event) => void reviewAgain({ part: Number(event.currentTarget.value) })}>
        {Array.from({ length: source.parts }, (_, i) => i + 1).map((part) => (
          <option key={part} value={part} selected={part === source.part}>
            {part} of {source.parts}
          </option>
        ))}
      </select>
    </span>
  );
}

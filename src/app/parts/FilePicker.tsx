import { useId } from 'preact/hooks';
import { openFiles } from '../state.ts';

/** The picker, with a place that says where to drop. */
export function FilePicker() {
  const id = useId();
  return (
    <div class="drop-zone">
      <label class="button" for={id}>
        Choose a flight log
      </label>
      <input
        id={id}
        class="unseen"
        type="file"
        multiple
        accept=".csv,.tsv,.txt,.json,.jsonl,.ndjson,.log,.dat,.gz"
        onChange={(event) => {
          const input = event.currentTarget;
          void openFiles([...(input.files ?? [])]).finally(() => {
            input.value = '';
          });
        }}
      />
      <p>
        or drop it anywhere on this page, together with its mission card if there is one (NAME.mission.json
        beside NAME.csv). Delimited text, JSON and JSON lines are read, also gzipped. The files stay on this
        machine.
      </p>
    </div>
  );
}

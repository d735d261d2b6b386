import { useId } from 'preact/hooks';
import { likelyFiles } from '../gatherFiles.ts';
import { openFiles } from '../given.ts';

function take(input: HTMLInputElement, keep: (files: File[]) => File[] = (f) => f): void {
  // The list empties with the input: it is copied first, so that the same file can be chosen again.
  const files = keep([...(input.files ?? [])]);
  input.value = '';
  if (files.length > 0) void openFiles(files);
}

/** The pickers, with a line that says what else can be done. */
export function FilePicker() {
  const file = useId();
  const folder = useId();
  return (
    <div class="drop-zone">
      <div class="pickers">
        <span class="pick">
          <input
            id={file}
            type="file"
            multiple
            accept=".csv,.tsv,.txt,.json,.jsonl,.ndjson,.log,.dat,.oem,.gz,.zip"
            onChange={(event) => take(event.currentTarget)}
          />
          <label class="button" for={file}>
            Choose a flight log
          </label>
        </span>
        <span class="pick">
          <input
            id={folder}
            type="file"
            multiple
            {...{ webkitdirectory: true }}
            onChange={(event) => take(event.currentTarget, likelyFiles)}
          />
          <label class="button lesser" for={folder}>
            a whole folder
          </label>
        </span>
      </div>
      <p>
        or drop files anywhere on this page, or paste rows. A mission card goes with its log
        (NAME.mission.json beside NAME.csv), a plan too. Delimited text, JSON and JSON lines are read, also
        gzipped. The files stay on this machine.
      </p>
    </div>
  );
}

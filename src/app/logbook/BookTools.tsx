import { useState } from 'preact/hooks';
import { failureOf } from '../failure.ts';
import { route, setView } from '../route.ts';
import { saveFile } from '../saveFile.ts';
import { problem } from '../state.ts';
import { type GroupName, groupings, type SortName, sortings } from './arrange.ts';

/** What the address says, where it says something that there is. */
export function sortOf(view: Readonly<Record<string, string>>): SortName {
  return view.sort !== undefined && Object.hasOwn(sortings, view.sort) ? (view.sort as SortName) : 'added';
}

export function groupOf(view: Readonly<Record<string, string>>): GroupName {
  return view.group !== undefined && Object.hasOwn(groupings, view.group)
    ? (view.group as GroupName)
    : 'none';
}

function Choice<T extends string>(props: {
  readonly label: string;
  readonly options: Readonly<Record<T, string>>;
  readonly value: T;
  readonly onChoice: (value: T) => void;
}) {
  return (
    <label>
      {props.label}{' '}
      <select value={props.value} onChange={(event) => props.onChoice(event.currentTarget.value as T)}>
        {Object.entries<string>(props.options).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

function ExportButton() {
  const [working, setWorking] = useState<string | null>(null);
  const save = async () => {
    setWorking('0 %');
    try {
      const { exportBook } = await import('../book/exportBook.ts');
      const file = await exportBook((done, total) => setWorking(`${Math.round((100 * done) / total)} %`));
      saveFile(`lossbook ${new Date().toISOString().slice(0, 10)}.zip`, file);
    } catch (error) {
      problem.value = failureOf(error);
    }
    setWorking(null);
  };
  return (
    <button type="button" class="plain" disabled={working !== null} onClick={() => void save()}>
      {working === null ? 'Export the logbook' : `Exporting, ${working}`}
    </button>
  );
}

/** Search, order and the way out of the logbook. */
export function BookTools({
  sought,
  onSearch,
}: {
  readonly sought: string;
  readonly onSearch: (text: string) => void;
}) {
  const { view } = route.value;
  return (
    <div class="book-tools">
      <label class="search">
        Search <input type="search" value={sought} onInput={(event) => onSearch(event.currentTarget.value)} />
      </label>
      <Choice
        label="Sort by"
        options={sortings}
        value={sortOf(view)}
        onChoice={(sort) => setView({ sort: sort === 'added' ? null : sort })}
      />
      <Choice
        label="Group by"
        options={groupings}
        value={groupOf(view)}
        onChoice={(group) => setView({ group: group === 'none' ? null : group })}
      />
      <ExportButton />
    </div>
  );
}

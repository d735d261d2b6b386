import { useId } from 'preact/hooks';

interface Props {
  readonly label: string;
  /** Value to words, in order. */
  readonly options: Readonly<Record<string, string>>;
  readonly value: string;
  readonly fault?: string | null;
  readonly onPick: (value: string) => void;
}

/** One choice out of few. */
export function Pick({ label, options, value, fault = null, onPick }: Props) {
  const id = useId();
  return (
    <div class="entry wide">
      <label for={id}>{label}</label>
      <select
        id={id}
        aria-invalid={fault === null ? undefined : true}
        aria-describedby={fault === null ? undefined : `${id}-note`}
        onChange={(event) => onPick(event.currentTarget.value)}
      >
        {Object.entries(options).map(([key, words]) => (
          <option key={key} value={key} selected={key === value}>
            {words}
          </option>
        ))}
      </select>
      {fault === null ? null : (
        <p id={`${id}-note`} class="entry-note fault">
          {fault}
        </p>
      )}
    </div>
  );
}

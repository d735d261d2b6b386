interface Props {
  readonly title: string;
  /** A clause that says what is being done. */
  readonly text: string;
  /** How far it has come, 0 to 1; null where that is not known. */
  readonly share: number | null;
  readonly onStop: () => void;
}

/** What is being worked on, how far it has come, and the way to end it. */
export function WorkLine({ title, text, share, onStop }: Props) {
  return (
    <div class="working">
      <p>
        <strong>{title}</strong>: {text} …
      </p>
      {share === null ? null : <progress value={share} aria-label="Done so far" />}
      <button type="button" class="plain" onClick={onStop}>
        Stop
      </button>
    </div>
  );
}

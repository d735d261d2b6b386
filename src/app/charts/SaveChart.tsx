import { type PictureOf, type SavedPicture, saveCsv, savePng, saveSvg } from './savePicture.ts';

interface Props {
  /** The chart's name, as in the file names. */
  readonly name: string;
  readonly review: PictureOf;
  /** Drawn when asked for; null where there is nothing to draw. */
  readonly picture: () => SavedPicture | null;
  readonly csv: (() => string) | null;
}

/** Buttons that save a chart as a picture and its numbers as a table. */
export function SaveChart({ name, review, picture, csv }: Props) {
  const withPicture = (save: (p: SavedPicture) => unknown) => () => {
    const drawn = picture();
    if (drawn !== null) void save(drawn);
  };
  const kinds = [
    { label: 'PNG', save: withPicture((p) => savePng(p, review, name)) },
    { label: 'SVG', save: withPicture((p) => saveSvg(p, review, name)) },
    ...(csv === null ? [] : [{ label: 'CSV', save: () => saveCsv(csv(), review, name) }]),
  ];
  return (
    <fieldset class="save-chart">
      <legend class="unseen">Save {name}</legend>
      <span class="quiet" aria-hidden="true">
        Save
      </span>
      {kinds.map(({ label, save }) => (
        <button key={label} type="button" class="plain" onClick={save}>
          <span class="unseen">Save {name} as </span>
          {label}
        </button>
      ))}
    </fieldset>
  );
}

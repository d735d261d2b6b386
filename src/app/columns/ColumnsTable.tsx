import type { ColumnSample } from '../../log/columnSample.ts';
import type { ChannelReading, ColumnChoice } from '../../log/types.ts';
import { ColumnRow } from './ColumnRow.tsx';
import { choiceFor, withChoice } from './choose.ts';

interface Props {
  readonly columns: readonly ColumnSample[];
  readonly readings: readonly ChannelReading[];
  readonly map: readonly ColumnChoice[];
  readonly onMap: (map: readonly ColumnChoice[]) => void;
}

/** More columns than these are shown by those that are used first. */
const many = 60;

/** Every column of the file in its order. */
export function ColumnsTable({ columns, readings, map, onMap }: Props) {
  const rows = columns.map((sample, index) => ({
    sample,
    index,
    reading: readings.find((r) => r.columnIndex === index) ?? null,
    choice: choiceFor(columns, index, map),
  }));
  const shown = rows.length <= many ? rows : rows.filter((r, i) => r.reading !== null || i < many);
  return (
    <>
      <table class="figures columns-table">
        <thead>
          <tr>
            <th scope="col">column</th>
            <th scope="col">taken for</th>
            <th scope="col">how sure, and why</th>
            <th scope="col">first values</th>
            <th scope="col">course</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ sample, index, reading, choice }) => (
            <ColumnRow
              key={index}
              sample={sample}
              reading={reading}
              choice={choice}
              onChoose={(channel, unit) => onMap(withChoice(columns, index, map, channel, unit))}
            />
          ))}
        </tbody>
      </table>
      {shown.length === rows.length ? null : (
        <p class="quiet">{rows.length - shown.length} more columns that are not used are not shown.</p>
      )}
    </>
  );
}

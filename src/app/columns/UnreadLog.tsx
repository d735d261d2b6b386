import { useState } from 'preact/hooks';
import { sentence } from '../../exchange/sentence.ts';
import type { ColumnChoice } from '../../log/types.ts';
import { rememberColumns } from '../book/book.ts';
import { openFiles } from '../given.ts';
import type { Failure } from '../protocol.ts';
import { ColumnsTable } from './ColumnsTable.tsx';

/** A log that could not be read for want of columns: the reader says which they are, and it is read anew. */
export function UnreadLog({
  files,
  failure,
}: {
  readonly files: readonly File[];
  readonly failure: Failure;
}) {
  const columns = failure.columns ?? [];
  const [map, setMap] = useState<readonly ColumnChoice[]>([]);
  const read = async () => {
    await rememberColumns({ headers: columns.map((c) => c.header), choices: map });
    await openFiles(files);
  };
  return (
    <>
      <h1 tabIndex={-1}>Say which columns of {failure.where.file ?? 'this log'} are which.</h1>
      <p class="detail">
        {sentence(failure.what)} A review needs time, altitude and speed; mass, throttle and pitch make it
        whole.
      </p>
      <ColumnsTable columns={columns} readings={[]} map={map} onMap={setMap} />
      <p class="card-actions">
        <button type="button" class="button" disabled={map.length === 0} onClick={() => void read()}>
          Read it with these columns
        </button>
      </p>
    </>
  );
}

import { useEffect, useRef } from 'preact/hooks';
import { deletedLast, forgetDeleted, undoDelete } from '../book/book.ts';

/** The way back from the last deletion. The focus comes here, since the button that had it is gone. */
export function UndoLine() {
  const deleted = deletedLast.value;
  const undo = useRef<HTMLButtonElement>(null);
  const id = deleted?.id;
  const before = useRef(id);
  useEffect(() => {
    if (id !== undefined && before.current !== id) undo.current?.focus();
    before.current = id;
  }, [id]);
  return (
    <div role="status">
      {deleted === null ? null : (
        <p class="undo">
          {deleted.title} is deleted.{' '}
          <button type="button" class="plain strong" ref={undo} onClick={() => void undoDelete()}>
            Undo
          </button>
          <button type="button" class="plain" onClick={() => void forgetDeleted()}>
            Delete for good
          </button>
        </p>
      )}
    </div>
  );
}

import { useEffect, useState } from 'preact/hooks';
import { openFiles } from '../state.ts';

function bringsFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') ?? false;
}

/** Files may be dropped on any part of the page. */
export function DropAnywhere() {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const onOver = (event: DragEvent) => {
      if (!bringsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!bringsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      void openFiles([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener('dragover', onOver);
    addEventListener('dragleave', onLeave);
    addEventListener('drop', onDrop);
    return () => {
      removeEventListener('dragover', onOver);
      removeEventListener('dragleave', onLeave);
      removeEventListener('drop', onDrop);
    };
  }, []);
  return over ? (
    <div class="drop-anywhere" aria-hidden="true">
      Drop the log here, its mission card with it
    </div>
  ) : null;
}

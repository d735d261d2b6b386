import { useEffect, useState } from 'preact/hooks';
import { gatherFiles, pastedFile } from '../gatherFiles.ts';
import { openFiles } from '../given.ts';

function bringsFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') ?? false;
}

async function openGathered(data: DataTransfer): Promise<void> {
  const files = await gatherFiles(data);
  if (files.length > 0) await openFiles(files);
}

/** Where pasted text is meant for the field that has the focus. */
function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, textarea, [contenteditable]') !== null;
}

/** Files may be dropped on any part of the page, and rows or files pasted. */
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
      if (!bringsFiles(event) || event.dataTransfer === null) return;
      event.preventDefault();
      setOver(false);
      void openGathered(event.dataTransfer);
    };
    const onPaste = (event: ClipboardEvent) => {
      const data = event.clipboardData;
      if (data === null || isField(event.target)) return;
      if (data.files.length > 0) {
        event.preventDefault();
        void openGathered(data);
        return;
      }
      const file = pastedFile(data.getData('text/plain'), new Date());
      if (file !== null) void openFiles([file]);
    };
    addEventListener('dragover', onOver);
    addEventListener('dragleave', onLeave);
    addEventListener('drop', onDrop);
    addEventListener('paste', onPaste);
    return () => {
      removeEventListener('dragover', onOver);
      removeEventListener('dragleave', onLeave);
      removeEventListener('drop', onDrop);
      removeEventListener('paste', onPaste);
    };
  }, []);
  return over ? (
    <div class="drop-anywhere" aria-hidden="true">
      Drop logs here, their mission cards with them
    </div>
  ) : null;
}

import type { ComponentChildren } from 'preact';
import { activeRow, canRedo, canUndo, redoEdit, sheet, undoEdit } from './editorState.ts';
import { deleteRow, insertBelow, moveRow } from './rowActions.ts';

interface ToolProps {
  readonly off: boolean;
  readonly act: () => void;
  readonly children: ComponentChildren;
}

function Tool({ off, act, children }: ToolProps) {
  return (
    <button
      type="button"
      class="plain"
      // A button that goes off under the finger would lose the focus.
      aria-disabled={off ? true : undefined}
      onClick={() => {
        if (!off) act();
      }}
    >
      {children}
    </button>
  );
}

/** What can be done with the row that was written in last. */
export function RowTools() {
  const rows = sheet.value?.rows ?? [];
  const place = rows.findIndex((r) => r.id === activeRow.value);
  const row = rows[place];
  const name = row === undefined ? '' : ` row ${place + 1}`;
  const tools = [
    { label: 'Insert below', off: row === undefined, act: (id: number) => insertBelow(id) },
    { label: 'Move up', off: place <= 0, act: (id: number) => moveRow(id, -1, null) },
    {
      label: 'Move down',
      off: row === undefined || place === rows.length - 1,
      act: (id: number) => moveRow(id, 1, null),
    },
    { label: 'Delete', off: row === undefined, act: (id: number) => deleteRow(id) },
  ];
  return (
    <fieldset class="row-tools">
      <legend>{row === undefined ? 'No row chosen' : `Row ${place + 1}`}</legend>
      {tools.map(({ label, off, act }) => (
        <Tool key={label} off={off} act={() => row !== undefined && act(row.id)}>
          {label}
          <span class="unseen">{name}</span>
        </Tool>
      ))}
    </fieldset>
  );
}

/** The way back and forth. */
export function WayBack() {
  return (
    <span class="way-back">
      <Tool off={!canUndo.value} act={undoEdit}>
        Undo
      </Tool>
      <Tool off={!canRedo.value} act={redoEdit}>
        Redo
      </Tool>
    </span>
  );
}

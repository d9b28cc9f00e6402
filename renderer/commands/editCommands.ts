import { copyValues } from '../actions/copyValues.ts';
import { deleteSelected } from '../actions/deleteSelected.ts';
import { redoWordsOf, undoWordsOf } from '../state/recordStore.ts';
import { always, type Command, stateFor, unless } from './command.ts';
import { firstReason, withoutCapture, withoutEditing } from './reasons.ts';

export const EDIT_COMMANDS: readonly Command[] = [
  {
    id: 'edit.undo',
    state: ({ record }) => {
      const words = undoWordsOf(record.getState());
      const signed = record.getState().history?.signed === true;
      const nothing = signed ? 'An opinion was signed: undo goes no further back.' : 'There is nothing to undo.';
      return { ...stateFor(words === null ? nothing : null), words };
    },
    run: ({ record, notices }) => {
      const words = undoWordsOf(record.getState());
      record.getState().undo();
      notices.getState().say(`${words ?? 'Undo'}. Done.`);
    },
  },
  {
    id: 'edit.redo',
    state: ({ record }) => {
      const words = redoWordsOf(record.getState());
      return { ...stateFor(words === null ? 'There is nothing to do again.' : null), words };
    },
    run: ({ record, notices }) => {
      const words = redoWordsOf(record.getState());
      record.getState().redo();
      notices.getState().say(`${words ?? 'Redo'}. Done.`);
    },
  },
  unless(
    'edit.delete',
    (program) => {
      const { selected } = program.workspace.getState();
      const nothing = selected === null || selected.kind === 'offer';
      return firstReason(withoutEditing(program), nothing ? 'Select a window, a reading or a note first.' : null);
    },
    deleteSelected,
  ),
  unless('edit.copyValues', withoutCapture, copyValues),
  always('edit.find', ({ dialogs }) => dialogs.getState().show({ kind: 'find' })),
];

import { useRef, useState } from 'react';
import { useStore } from 'zustand';
import { nameAuthor, writeNote } from '../actions/notesAndReadings.ts';
import { useProgram } from '../program/programContext.ts';
import type { DialogState } from '../state/dialogStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { placeWords } from '../vehicle/NoteList.tsx';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { TextField } from '../widgets/TextField.tsx';
import { instantWords } from '../words/times.ts';
import type { DialogProps } from './dialogProps.ts';

interface NoteDialogProps extends DialogProps {
  readonly dialog: Extract<DialogState, { kind: 'note' }>;
}

/** A note is kept while it is typed; there is nothing to confirm. */
export function NoteDialog({ dialog, onClose }: NoteDialogProps) {
  const program = useProgram();
  const { captureId, startS, endS } = dialog;
  const [noteId, setNoteId] = useState(dialog.noteId);
  const latestId = useRef(dialog.noteId);
  const note = useStore(program.record, (state) => recordOf(state)?.notes[noteId ?? '']);
  const capture = useStore(program.record, (state) => recordOf(state)?.captures[captureId ?? '']);
  const reader = useStore(program.settings, (state) => state.settings.reader);
  // Asked as long as the dialog is open: a field that went with the first letter would take no name.
  const [nameless] = useState(reader === '' && (note?.author ?? '') === '');

  const keep = (text: string): void => {
    if (latestId.current === null && text.trim() === '') return;
    latestId.current = writeNote(program, latestId.current, { captureId, startS, endS }, text);
    setNoteId(latestId.current);
  };

  const where = placeWords({ startS, endS }, capture);
  const title = captureId === null ? 'Note on the vehicle' : `Note ${where}`;
  return (
    <Dialog
      title={dialog.noteId === null ? title : 'Note'}
      lead={
        note === undefined
          ? `${capture?.name ?? 'The vehicle as a whole'}. It is kept while you type.`
          : writtenWords(note)
      }
      onClose={onClose}
      foot={
        <Button look="main" onPress={onClose}>
          Done
        </Button>
      }
    >
      <TextField label="Words" value={note?.text ?? ''} rows={6} maxLength={20_000} autoFocus onValue={keep} />
      {nameless && (
        <TextField
          label="Your name, for this note and the next ones"
          value={reader}
          maxLength={200}
          onValue={(name) => nameAuthor(program, latestId.current, name)}
        />
      )}
    </Dialog>
  );
}

function writtenWords(note: { author: string; writtenAt: string; changedAt: string | null }): string {
  const by = note.author === '' ? 'Author not recorded' : note.author;
  const changed = note.changedAt === null ? '' : `, changed ${instantWords(note.changedAt)}`;
  return `${by}, written ${instantWords(note.writtenAt)}${changed}. It is kept while you type.`;
}

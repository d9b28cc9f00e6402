import { Pencil, Plus, Trash2 } from 'lucide-react';
import { useStore } from 'zustand';
import type { CaptureRef, Note, VehicleRecord } from '../../core/record/schema.ts';
import { goToNote } from '../actions/jump.ts';
import { deleteNote } from '../actions/notesAndReadings.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { firstWords } from '../state/selectors/onTraces.ts';
import { IconButton } from '../widgets/Button.tsx';
import { momentWords, stretchWords, timeForm } from '../words/captureTimes.ts';
import { ListPart, Row } from './Row.tsx';

/** Words pinned to a moment, a stretch, or the vehicle. */
export function NoteList({ record }: { readonly record: VehicleRecord }) {
  const notes = Object.values(record.notes).sort(inOrder);
  return (
    <ListPart
      title="Notes"
      add={<CommandButton id="vehicle.addNote" icon={Plus} signOnly />}
      empty={notes.length === 0 ? 'Words pinned to a moment or to the vehicle.' : null}
    >
      {notes.map((note) => (
        <NoteRow key={note.id} note={note} capture={record.captures[note.captureId ?? '']} />
      ))}
    </ListPart>
  );
}

/** Notes of the vehicle first, then along the captures. */
function inOrder(a: Note, b: Note): number {
  return (
    (a.captureId ?? '').localeCompare(b.captureId ?? '') ||
    (a.startS ?? 0) - (b.startS ?? 0) ||
    a.writtenAt.localeCompare(b.writtenAt)
  );
}

function NoteRow({ note, capture }: { readonly note: Note; readonly capture: CaptureRef | undefined }) {
  const program = useProgram();
  const chosen = useStore(program.workspace, ({ selected }) => selected?.kind === 'note' && selected.id === note.id);
  const words = firstWords(note.text);
  return (
    <Row
      chosen={chosen}
      first={words}
      second={[placeWords(note, capture), note.author].filter(Boolean).join(', ')}
      onChoose={() => goToNote(program, note.id)}
    >
      <IconButton
        icon={Pencil}
        label={`Edit the note ${words}`}
        onPress={() => {
          const { id, captureId, startS, endS } = note;
          program.dialogs.getState().show({ kind: 'note', noteId: id, captureId, startS, endS });
        }}
      />
      <IconButton icon={Trash2} label={`Delete the note ${words}`} onPress={() => deleteNote(program, note.id)} />
    </Row>
  );
}

export function placeWords(
  { startS, endS }: Pick<Note, 'startS' | 'endS'>,
  capture: Pick<CaptureRef, 'name' | 'durationS'> | undefined,
): string {
  if (startS === null) return capture?.name ?? 'Vehicle';
  if (endS !== null) return stretchWords({ startS, endS }, capture?.durationS);
  return `at ${momentWords(startS, timeForm(capture?.durationS ?? startS), 1)}`;
}

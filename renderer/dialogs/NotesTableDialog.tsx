import { Download } from 'lucide-react';
import { useStore } from 'zustand';
import { type NoteFileKind, notesFile } from '../../core/evidence/notes/notesFile.ts';
import { fileName, tellExported } from '../actions/exportSheet.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { placeWords } from '../vehicle/NoteList.tsx';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { instantWords } from '../words/times.ts';
import { Problems } from '../workspace/Problems.tsx';
import type { DialogProps } from './dialogProps.ts';

const KINDS: readonly { kind: NoteFileKind; words: string }[] = [
  { kind: 'csv', words: 'CSV' },
  { kind: 'json', words: 'JSON' },
  { kind: 'md', words: 'Markdown' },
];

/** The notes as a table, and as a file of their own. */
export function NotesTableDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  if (record === null) return null;
  const write = async (kind: NoteFileKind): Promise<void> => {
    const suggestedName = fileName(`Notes on ${record.identity.name}`, kind);
    tellExported(
      program,
      await program.shell.exportFile({ suggestedName, kind, content: notesFile(record, kind, '.') }),
    );
  };
  return (
    <Dialog
      title="Notes as a table"
      width="wide"
      onClose={onClose}
      foot={KINDS.map(({ kind, words }) => (
        <Button
          key={kind}
          look={kind === 'csv' ? 'main' : 'outline'}
          icon={Download}
          label={`${words}: write the notes`}
          onPress={() => void write(kind)}
        >
          {words}
        </Button>
      ))}
    >
      <Problems places={['export']} />
      <table className="plainTable">
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Note</th>
            <th scope="col">Author</th>
            <th scope="col">Written</th>
          </tr>
        </thead>
        <tbody>
          {Object.values(record.notes).map((note) => (
            <tr key={note.id}>
              <td>{placeWords(note, record.captures[note.captureId ?? ''])}</td>
              <td className="noteText">{note.text}</td>
              <td>{note.author === '' ? 'not recorded' : note.author}</td>
              <td>{instantWords(note.writtenAt)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Dialog>
  );
}

import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';

const SAVE_WORDS = {
  saved: 'Saved',
  pending: 'Saving',
  failed: 'Not saved: the work is kept in this window',
} as const;

/** What was just done, in a sentence, and whether everything is on disk. Announced without taking the focus. */
export function StatusLine() {
  const program = useProgram();
  const words = useStore(program.notices, (state) => state.words);
  const save = useStore(program.record, (state) => (recordOf(state) === null ? null : state.save));
  const readOnly = useStore(program.record, (state) => state.readOnly);
  return (
    <footer className="statusLine">
      <p role="status">{words}</p>
      {save !== null && <p className={`saveState ${save}`}>{readOnly ? 'Read only' : SAVE_WORDS[save]}</p>}
    </footer>
  );
}

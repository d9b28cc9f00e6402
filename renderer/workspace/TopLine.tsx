import { Diff, FileText, FolderOpen, StickyNote, Thermometer } from 'lucide-react';
import { useStore } from 'zustand';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Toolbar } from '../widgets/Toolbar.tsx';
import { Problems } from './Problems.tsx';

/** The sentence that says what is known, and the few things one does next. */
export function TopLine() {
  const program = useProgram();
  const sentence = useStore(program.score, (state) => state.score?.sentence ?? null);
  const captures = useStore(program.record, (state) => Object.keys(recordOf(state)?.captures ?? {}).length);
  return (
    <header className="topLine">
      <h1>{captures === 0 ? 'No capture yet. Open one, or drop it on this window.' : (sentence ?? 'Reading.')}</h1>
      <Toolbar label="Work on this vehicle" className="deeds">
        <CommandButton id="file.open" icon={FolderOpen} words="Open capture" />
        <CommandButton id="vehicle.addReading" icon={Thermometer} words="Add temperatures" />
        <CommandButton id="window.note" icon={StickyNote} words="Note at cursor" />
        <CommandButton id="window.compare" icon={Diff} words="Compare windows" />
        <CommandButton id="file.exportSheet" icon={FileText} words="Evidence sheet" />
      </Toolbar>
      <Problems places={['open', 'locate', 'save', 'vehicle', 'score', 'export']} />
    </header>
  );
}

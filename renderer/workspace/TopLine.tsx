import { Diff, FileText, FolderOpen, StickyNote, Thermometer } from 'lucide-react';
import { useStore } from 'zustand';
import { isReadBlind } from '../../core/record/blindReading.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useOfferedInstead } from '../finding/useOfferedInstead.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Toolbar } from '../widgets/Toolbar.tsx';
import { BlindBar } from './BlindBar.tsx';
import { Problems } from './Problems.tsx';

/** What is known, in words; before anything has been judged, what to do. */
function topSentence(record: VehicleRecord | null, sentence: string | null): string {
  if (record === null) return '';
  const { captures, windows, readings } = record;
  if (isReadBlind(record)) return 'Blind reading: mark what you would judge, then sign your own opinion.';
  const isEmpty = (entries: object): boolean => Object.keys(entries).length === 0;
  if (!isEmpty(windows) || !isEmpty(readings)) return sentence ?? 'Reading.';
  if (isEmpty(captures)) return 'No capture yet. Open one, or drop it on this window.';
  return 'Nothing is judged yet. Accept an offered window, or mark one on the traces.';
}

/** The sentence that says what is known, and the few things one does next. */
export function TopLine() {
  const program = useProgram();
  const sentence = useStore(program.score, (state) => state.score?.sentence ?? null);
  const record = useStore(program.record, recordOf);
  const offered = useOfferedInstead();
  return (
    <header className="topLine">
      <h1>{offered ?? topSentence(record, sentence)}</h1>
      <Toolbar label="Work on this vehicle" className="deeds">
        <CommandButton id="file.open" icon={FolderOpen} words="Open capture" />
        <CommandButton id="vehicle.addReading" icon={Thermometer} words="Add temperatures" />
        <CommandButton id="window.note" icon={StickyNote} words="Note at cursor" />
        <CommandButton id="window.compare" icon={Diff} words="Compare windows" />
        <CommandButton id="file.exportSheet" icon={FileText} words="Evidence sheet" />
      </Toolbar>
      {record !== null && isReadBlind(record) && <BlindBar />}
      <Problems places={['open', 'locate', 'save', 'vehicle', 'score', 'export']} />
    </header>
  );
}

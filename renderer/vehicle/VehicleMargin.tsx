import { ListTree, SquarePen } from 'lucide-react';
import { useStore } from 'zustand';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { numberWords } from '../words/numbers.ts';
import { CaptureList } from './CaptureList.tsx';
import { NoteList } from './NoteList.tsx';
import { OpinionList } from './OpinionList.tsx';
import { ReadingList } from './ReadingList.tsx';
import { WindowList } from './WindowList.tsx';

/** What belongs to the vehicle: its captures, windows, temperatures and notes, each a plain list. */
export function VehicleMargin() {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  if (record === null) return null;
  const { name, mileage } = record.identity;
  const codes = Object.values(record.troubleCodes).map(({ code }) => code);
  const facts = [
    ...codes,
    ...(mileage === null ? [] : [`${numberWords(mileage.value, 0)} ${mileage.unit}`]),
    ...(record.archived ? ['in the archive'] : []),
  ];
  return (
    <aside className="margin left" aria-label="Vehicle">
      <div className="marginHead">
        <h2>{name}</h2>
        <p className="soft">{facts.length === 0 ? 'No codes recorded' : facts.join(', ')}</p>
        <div className="marginDeeds">
          <CommandButton id="vehicle.details" icon={SquarePen} words="Details" />
          <CommandButton id="vehicle.list" icon={ListTree} words="Vehicles" />
        </div>
      </div>
      <CaptureList record={record} />
      <WindowList record={record} />
      <ReadingList record={record} />
      <NoteList record={record} />
      <OpinionList record={record} />
    </aside>
  );
}

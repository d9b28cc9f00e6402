import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { openDropped } from '../actions/openCaptures.ts';
import { isSampleVehicle } from '../actions/sampleStories.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';

/** What a drag over the window would do: files are taken, anything else is not. */
type Drag = 'files' | 'other' | null;

/** Takes files dropped anywhere on the window, and shows while they are dragged what will happen to them. */
export function DropSign() {
  const program = useProgram();
  const [drag, setDrag] = useState<Drag>(null);
  const [half, setHalf] = useState<'open' | 'new'>('open');
  const vehicle = useStore(program.record, (state) => {
    const record = recordOf(state);
    return record === null || isSampleVehicle(record.id) || state.readOnly ? null : record.identity.name;
  });
  const into = vehicle === null ? 'new' : half;
  useEffect(
    () =>
      hearDrags({
        over: (kind, x) => {
          setDrag(kind);
          setHalf(x > window.innerWidth / 2 ? 'new' : 'open');
        },
        leave: () => setDrag(null),
        drop: (files, x) => {
          setDrag(null);
          const where = vehicle !== null && x <= window.innerWidth / 2 ? 'open' : 'new';
          if (files.length > 0) void openDropped(program, files, where);
          else program.notices.getState().say('Only files can be dropped here: captures as an instrument wrote them.');
        },
      }),
    [program, vehicle],
  );
  if (drag === null) return null;
  return (
    <div className="dropSign" role="status">
      {drag === 'other' && <p>This is no file. Drop a capture as an instrument wrote it.</p>}
      {drag === 'files' && vehicle !== null && <p className={into === 'open' ? 'here' : ''}>Add to {vehicle}</p>}
      {drag === 'files' && <p className={into === 'new' ? 'here' : ''}>Begin a new vehicle with it</p>}
    </div>
  );
}

interface DragHearers {
  over(kind: Exclude<Drag, null>, x: number): void;
  leave(): void;
  drop(files: readonly File[], x: number): void;
}

function hearDrags({ over, leave, drop }: DragHearers): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const isOver = (event: DragEvent): void => {
    event.preventDefault();
    const files = event.dataTransfer?.types.includes('Files') === true;
    if (event.dataTransfer !== null) event.dataTransfer.dropEffect = files ? 'copy' : 'none';
    over(files ? 'files' : 'other', event.clientX);
  };
  window.addEventListener('dragenter', isOver, { signal });
  window.addEventListener('dragover', isOver, { signal });
  window.addEventListener('dragleave', (event) => event.relatedTarget === null && leave(), { signal });
  window.addEventListener(
    'drop',
    (event) => {
      event.preventDefault();
      drop([...(event.dataTransfer?.files ?? [])], event.clientX);
    },
    { signal },
  );
  return () => stop.abort();
}

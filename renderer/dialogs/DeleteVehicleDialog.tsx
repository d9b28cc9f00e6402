import { Archive, Trash2 } from 'lucide-react';
import { useStore } from 'zustand';
import { archiveVehicle, deleteVehicle } from '../actions/vehicles.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { countWords } from '../words/numbers.ts';
import type { DialogProps } from './dialogProps.ts';

/** Asks once more before a vehicle is removed for good, and offers to put it away instead. */
export function DeleteVehicleDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  const readOnly = useStore(program.record, (state) => state.readOnly);
  if (record === null) return null;
  const { identity, windows, notes, readings, opinions } = record;
  const marked = [
    countWords(Object.keys(windows).length, 'window'),
    countWords(Object.keys(notes).length, 'note'),
    countWords(Object.keys(readings).length, 'temperature reading'),
    countWords(Object.keys(opinions).length, 'signed entry', 'signed entries'),
  ].join(', ');
  const close = (deed: () => Promise<void>) => () => {
    onClose();
    void deed();
  };
  return (
    <Dialog
      title={`Delete ${identity.name}?`}
      onClose={onClose}
      foot={
        <>
          {!record.archived && !readOnly && (
            <Button icon={Archive} className="push" onPress={close(() => archiveVehicle(program))}>
              Archive it instead
            </Button>
          )}
          <Button onPress={onClose} autoFocus>
            Keep it
          </Button>
          <Button icon={Trash2} look="main" onPress={close(() => deleteVehicle(program))}>
            Delete for good
          </Button>
        </>
      }
    >
      <p>
        Its record ({marked}), all its earlier saves, and copies of captures that came in a bundle are removed from this
        computer. Undo does not bring them back.
      </p>
      <p>Files of captures that you opened yourself stay where they are. What you have handed out stays with others.</p>
    </Dialog>
  );
}

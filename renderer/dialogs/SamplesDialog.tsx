import { openPicked } from '../actions/openCaptures.ts';
import { useProgram } from '../program/programContext.ts';
import { SampleList } from '../start/SampleList.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import type { DialogProps } from './dialogProps.ts';

/** The invented drives that come with the program. */
export function SamplesDialog({ onClose }: DialogProps) {
  const program = useProgram();
  return (
    <Dialog
      title="Sample drives"
      lead="Invented by a simulation, no real vehicle. They open as vehicles of their own and never mix with yours."
      width="wide"
      onClose={onClose}
    >
      <SampleList
        onOpen={(drive) => {
          onClose();
          void openPicked(program, [drive]);
        }}
      />
    </Dialog>
  );
}

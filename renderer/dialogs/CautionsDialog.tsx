import { Dialog } from '../widgets/Dialog.tsx';
import { CAUTIONS } from '../words/cautions.ts';
import type { DialogProps } from './dialogProps.ts';

/** All cautions in one place; they also stand where the work is done. */
export function CautionsDialog({ onClose }: DialogProps) {
  return (
    <Dialog
      title="Cautions"
      lead="They also stand beside every test that touches hot or moving parts."
      onClose={onClose}
    >
      <ul className="cautionPage">
        {CAUTIONS.map(({ id, words }) => (
          <li key={id}>{words}</li>
        ))}
      </ul>
    </Dialog>
  );
}

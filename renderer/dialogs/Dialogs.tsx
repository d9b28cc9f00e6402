import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import type { DialogState } from '../state/dialogStore.ts';
import { AboutDialog } from './AboutDialog.tsx';
import { BundleDialog } from './BundleDialog.tsx';
import { CautionsDialog } from './CautionsDialog.tsx';
import { ChannelsDialog } from './ChannelsDialog.tsx';
import { ColumnsDialog } from './ColumnsDialog.tsx';
import { CompareDialog } from './CompareDialog.tsx';
import { DeleteVehicleDialog } from './DeleteVehicleDialog.tsx';
import { FindDialog } from './FindDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { MeasuresDialog } from './MeasuresDialog.tsx';
import { NoteDialog } from './NoteDialog.tsx';
import { NotesTableDialog } from './NotesTableDialog.tsx';
import { OpinionsDialog } from './OpinionsDialog.tsx';
import { PictureDialog } from './PictureDialog.tsx';
import { ReadingDialog } from './ReadingDialog.tsx';
import { ReceivedDialog } from './ReceivedDialog.tsx';
import { SamplesDialog } from './SamplesDialog.tsx';
import { SettingsDialog } from './SettingsDialog.tsx';
import { SheetDialog } from './SheetDialog.tsx';
import { SignDialog } from './SignDialog.tsx';
import { VehicleDialog } from './VehicleDialog.tsx';
import { VehiclesDialog } from './VehiclesDialog.tsx';
import { WindowDialog } from './WindowDialog.tsx';
import { WithdrawDialog } from './WithdrawDialog.tsx';

/** The one dialog that lies over the page, or none. */
export function Dialogs() {
  const { dialogs } = useProgram();
  const dialog = useStore(dialogs, (state) => state.dialog);
  if (dialog === null) return null;
  return <Shown key={JSON.stringify(dialog)} dialog={dialog} onClose={() => dialogs.getState().close()} />;
}

function Shown({ dialog, onClose }: { readonly dialog: DialogState; onClose(): void }) {
  switch (dialog.kind) {
    case 'vehicleDetails':
      return <VehicleDialog {...(dialog.part === undefined ? {} : { part: dialog.part })} onClose={onClose} />;
    case 'deleteVehicle':
      return <DeleteVehicleDialog onClose={onClose} />;
    case 'vehicles':
      return <VehiclesDialog onClose={onClose} />;
    case 'samples':
      return <SamplesDialog onClose={onClose} />;
    case 'columns':
      return <ColumnsDialog captureId={dialog.captureId} onClose={onClose} />;
    case 'channels':
      return <ChannelsDialog onClose={onClose} />;
    case 'reading':
      return <ReadingDialog readingId={dialog.readingId} onClose={onClose} />;
    case 'note':
      return <NoteDialog dialog={dialog} onClose={onClose} />;
    case 'windowTimes':
      return <WindowDialog windowId={dialog.windowId} onClose={onClose} />;
    case 'sign':
      return <SignDialog answers={dialog.answers} onClose={onClose} />;
    case 'opinions':
      return <OpinionsDialog opinionId={dialog.opinionId} onClose={onClose} />;
    case 'withdraw':
      return <WithdrawDialog opinionId={dialog.opinionId} onClose={onClose} />;
    case 'compare':
      return <CompareDialog onClose={onClose} />;
    case 'sheet':
      return <SheetDialog onClose={onClose} />;
    case 'bundle':
      return <BundleDialog onClose={onClose} />;
    case 'received':
      return <ReceivedDialog bundles={dialog.bundles} />;
    case 'picture':
      return <PictureDialog onClose={onClose} />;
    case 'notesTable':
      return <NotesTableDialog onClose={onClose} />;
    case 'settings':
      return <SettingsDialog onClose={onClose} />;
    case 'find':
      return <FindDialog onClose={onClose} />;
    case 'keys':
      return <KeysDialog onClose={onClose} />;
    case 'measures':
      return <MeasuresDialog onClose={onClose} />;
    case 'cautions':
      return <CautionsDialog onClose={onClose} />;
    case 'about':
      return <AboutDialog onClose={onClose} />;
  }
}

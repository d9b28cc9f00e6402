import { useState } from 'react';
import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { type Tab, Tabs } from '../widgets/Tabs.tsx';
import type { DialogProps } from './dialogProps.ts';
import { CodesForm } from './vehicle/CodesForm.tsx';
import { ExhaustForm } from './vehicle/ExhaustForm.tsx';
import { IdentityForm } from './vehicle/IdentityForm.tsx';
import { PapersForm } from './vehicle/PapersForm.tsx';

type Part = 'identity' | 'codes' | 'exhaust' | 'papers';

const PARTS: readonly Tab<Part>[] = [
  { id: 'identity', words: 'Identity' },
  { id: 'codes', words: 'Codes and complaint' },
  { id: 'exhaust', words: 'Exhaust' },
  { id: 'papers', words: 'Warranty and costs' },
];

interface VehicleDialogProps extends DialogProps {
  readonly part?: Part | 'name';
}

/** Everything about the vehicle that is no capture. What is typed is kept at once and can be undone. */
export function VehicleDialog({ part = 'identity', onClose }: VehicleDialogProps) {
  const { record: store } = useProgram();
  const record = useStore(store, recordOf);
  const [shown, setShown] = useState<Part>(part === 'name' ? 'identity' : part);
  if (record === null) return null;
  return (
    <Dialog
      title={record.identity.name}
      lead="What is typed is kept at once and can be undone."
      width="wide"
      onClose={onClose}
      foot={
        <Button look="main" onPress={onClose}>
          Done
        </Button>
      }
    >
      <Tabs label="Parts of the vehicle" tabs={PARTS} chosen={shown} onChoose={(part) => setShown(part)}>
        {shown === 'identity' && <IdentityForm record={record} focusName={part === 'name'} />}
        {shown === 'codes' && <CodesForm record={record} />}
        {shown === 'exhaust' && <ExhaustForm record={record} />}
        {shown === 'papers' && <PapersForm record={record} />}
      </Tabs>
    </Dialog>
  );
}

import { useState } from 'react';
import { useStore } from 'zustand';
import { windowsInOrder } from '../../core/record/inOrder.ts';
import { likelyPair } from '../compare/likelyPair.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { SelectField } from '../widgets/SelectField.tsx';
import { stretchWords } from '../words/captureTimes.ts';
import type { DialogProps } from './dialogProps.ts';

/** Which window is laid over which. */
export function CompareDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  const [pair, setPair] = useState(() =>
    record === null ? null : likelyPair(record, program.workspace.getState().windowId),
  );
  if (record === null || pair === null) return null;
  const choices = windowsInOrder(record).map((window) => {
    const capture = record.captures[window.captureId];
    const stretch = stretchWords(window, capture?.durationS);
    return { value: window.id, words: `${windowName(window)}, ${capture?.name ?? ''}, ${stretch}` };
  });
  const same = pair.firstId === pair.secondId;
  return (
    <Dialog
      title="Compare windows"
      lead="Both are drawn on one time axis from their starts. What was not alike is said first."
      onClose={onClose}
      foot={
        <Button
          look="main"
          reason={same ? 'Choose two different windows.' : null}
          onPress={() => {
            program.workspace.getState().set({ compare: { ...pair, offsetS: 0 } });
            onClose();
          }}
        >
          Compare
        </Button>
      }
    >
      <SelectField
        label="This window"
        value={pair.firstId}
        choices={choices}
        autoFocus
        onValue={(firstId) => setPair({ ...pair, firstId })}
      />
      <SelectField
        label="with this one"
        value={pair.secondId}
        choices={choices}
        onValue={(secondId) => setPair({ ...pair, secondId })}
      />
    </Dialog>
  );
}

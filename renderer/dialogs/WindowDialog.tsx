import { useStore } from 'zustand';
import { WINDOW_KIND_WORDS } from '../../core/evidence/words/terms.ts';
import { moveWindow, renameWindow, setWindowBank, setWindowKind } from '../../core/record/edits/windows.ts';
import type { WindowKind } from '../../core/windows/window.ts';
import { deleteWindow } from '../actions/windows.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { choicesOf, SelectField } from '../widgets/SelectField.tsx';
import { TextField } from '../widgets/TextField.tsx';
import { durationWords } from '../words/times.ts';
import { BANK_CHOICES, bankOf, bankValue } from './bankChoice.ts';
import type { DialogProps } from './dialogProps.ts';

/** A window's name, exact times, bank and kind. Each change is a step of undo of its own. */
export function WindowDialog({ windowId, onClose }: DialogProps & { readonly windowId: string }) {
  const { record: store, captures, ...program } = useProgram();
  const window = useStore(store, (state) => recordOf(state)?.windows[windowId]);
  const durationS = useStore(captures, (state) => state.held[window?.captureId ?? '']?.summary.durationS ?? null);
  if (window === undefined) return null;
  const { startS, endS, bank, kind, name } = window;
  const edit = store.getState().edit;
  const most = durationS === null ? {} : { max: rounded(durationS) };
  return (
    <Dialog
      title={windowName(window)}
      lead={`${durationWords(endS - startS)} long. Changes count at once and can be undone.`}
      onClose={onClose}
      foot={
        <>
          <Button
            look="quiet"
            className="push"
            onPress={() => {
              onClose();
              deleteWindow({ record: store, captures, ...program }, windowId);
            }}
          >
            Delete window
          </Button>
          <Button look="main" onPress={onClose}>
            Done
          </Button>
        </>
      }
    >
      <div className="fields">
        <TextField
          label="Name"
          className="whole"
          value={name}
          hint="Left empty, it is called by its kind."
          autoFocus
          onValue={(typed) => edit(renameWindow(windowId, typed), `name ${windowId}`)}
        />
        <NumberField
          label="Starts at"
          unit="s"
          value={rounded(startS)}
          min={0}
          max={rounded(endS - LEAST_S)}
          onValue={(value) => value !== null && value < endS && edit(moveWindow(windowId, { startS: value, endS }))}
        />
        <NumberField
          label="Ends at"
          unit="s"
          value={rounded(endS)}
          min={rounded(startS + LEAST_S)}
          {...most}
          onValue={(value) => value !== null && value > startS && edit(moveWindow(windowId, { startS, endS: value }))}
        />
        <SelectField
          label="Bank"
          value={bankValue(bank)}
          choices={BANK_CHOICES}
          onValue={(value) => edit(setWindowBank(windowId, bankOf(value)))}
        />
        <SelectField
          label="What the engine does in it"
          value={kind}
          choices={choicesOf<WindowKind>(WINDOW_KIND_WORDS)}
          onValue={(value) => edit(setWindowKind(windowId, value))}
        />
      </div>
    </Dialog>
  );
}

/** Finer than any capture of the trade is timed, s. */
const LEAST_S = 0.001;

function rounded(timeS: number): number {
  return Math.round(timeS * 1000) / 1000;
}

import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Bank } from '../../core/capture/roles.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { ComparedSide } from '../plot/compareStackProps.ts';
import { useProgram } from '../program/programContext.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { windowName } from '../state/selectors/windowNames.ts';

/** A side, and the bank its window is about. */
export interface BankSide extends ComparedSide {
  readonly bank: Bank;
}

/** Short beside every trace. */
const SIDE_WORDS = { before: 'Before', after: 'After', knownGood: 'Twin', other: 'Other' } as const;

/** Both sides of a comparison, or null while a window or its capture is not there. */
export function useComparedSides(firstId: string, secondId: string): readonly [BankSide, BankSide] | null {
  const { record: store, captures } = useProgram();
  const record = useStore(store, recordOf);
  const held = useStore(captures, (state) => state.held);
  return useMemo(() => {
    if (record === null) return null;
    const first = sideOf(record, held, firstId);
    const second = sideOf(record, held, secondId);
    if (first === null || second === null) return null;
    return first.label === second.label
      ? [withName(first, record, firstId), withName(second, record, secondId)]
      : [first, second];
  }, [record, held, firstId, secondId]);
}

function sideOf(record: VehicleRecord, held: Readonly<Record<string, HeldCapture>>, windowId: string): BankSide | null {
  const window = record.windows[windowId];
  const capture = held[window?.captureId ?? ''];
  if (window === undefined || capture === undefined) return null;
  const label = SIDE_WORDS[record.captures[window.captureId]?.kind ?? 'other'];
  return { capture: capture.summary, source: capture.source, window, label, bank: window.bank };
}

/** Two captures of one kind, or two windows of one capture, are told apart by the windows' names. */
function withName(side: BankSide, record: VehicleRecord, windowId: string): BankSide {
  const window = record.windows[windowId];
  return window === undefined ? side : { ...side, label: `${side.label}, ${windowName(window)}` };
}

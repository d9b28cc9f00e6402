import { windowsInOrder } from '../../core/record/inOrder.ts';
import type { CaptureRef, RecordWindow, VehicleRecord } from '../../core/record/schema.ts';

export interface WindowPair {
  readonly firstId: string;
  readonly secondId: string;
}

/** Which kind of capture one wants to see beside which: before and after first, then the twin. */
const BESIDE: Readonly<Record<CaptureRef['kind'], readonly CaptureRef['kind'][]>> = {
  before: ['after', 'knownGood', 'before', 'other'],
  after: ['before', 'knownGood', 'after', 'other'],
  knownGood: ['before', 'after', 'other', 'knownGood'],
  other: ['before', 'after', 'knownGood', 'other'],
};

const FIRST: readonly CaptureRef['kind'][] = ['before', 'other', 'after', 'knownGood'];

/** The chosen window and the one a person most likely wants to see beside it; null where there are not two. */
export function likelyPair(record: VehicleRecord, chosenId: string | null): WindowPair | null {
  const windows = windowsInOrder(record);
  const first = windows.find((window) => window.id === chosenId) ?? windows[0];
  if (first === undefined) return null;
  const kindOf = (window: RecordWindow) => record.captures[window.captureId]?.kind ?? 'other';
  const order = BESIDE[kindOf(first)];
  const rank = (window: RecordWindow): number =>
    order.indexOf(kindOf(window)) * 2 + Number(window.kind !== first.kind || window.bank !== first.bank);
  const [second] = windows.filter((window) => window.id !== first.id).sort((a, b) => rank(a) - rank(b));
  if (second === undefined) return null;
  // How it was comes before how it is, and the vehicle's own window before the twin's.
  const swap = FIRST.indexOf(kindOf(second)) < FIRST.indexOf(kindOf(first));
  return swap ? { firstId: second.id, secondId: first.id } : { firstId: first.id, secondId: second.id };
}

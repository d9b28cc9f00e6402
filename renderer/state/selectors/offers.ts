import { bankWords, WINDOW_KIND_WORDS } from '../../../core/evidence/words/terms.ts';
import type { RecordWindow, VehicleRecord } from '../../../core/record/schema.ts';
import type { CaptureWindow, Stretch } from '../../../core/windows/window.ts';
import type { HeldCapture } from '../captureStore.ts';

/** A window the core offers and nobody has accepted yet. */
export interface Offer {
  readonly id: string;
  readonly captureId: string;
  readonly window: CaptureWindow;
}

/** An offer that overlaps a marked window by this share of both together is taken as accepted. */
const SAME_SHARE = 0.8;

/** The offers of a capture that are still open, in the order of the core. */
export function openOffers(held: HeldCapture | undefined, record: VehicleRecord | null): readonly Offer[] {
  if (held === undefined) return [];
  const marked = Object.values(record?.windows ?? {}).filter((window) => window.captureId === held.captureId);
  return held.offers
    .map((window, index) => ({ id: offerId(held.captureId, index), captureId: held.captureId, window }))
    .filter(({ window }) => !marked.some((one) => isSame(one, window)));
}

export function offerId(captureId: string, index: number): string {
  return `${captureId}/${index}`;
}

/** "Hold, bank 1": what an offer is called before it has a name. */
export function offerName({ kind, bank }: CaptureWindow): string {
  return bank === null ? WINDOW_KIND_WORDS[kind] : `${WINDOW_KIND_WORDS[kind]}, ${bankWords(bank)}`;
}

function isSame(marked: RecordWindow, offer: CaptureWindow): boolean {
  return (marked.bank === offer.bank || marked.bank === null) && overlap(marked, offer) >= SAME_SHARE;
}

/** Share of two stretches that both cover, of what either covers. */
export function overlap(one: Stretch, other: Stretch): number {
  const both = Math.min(one.endS, other.endS) - Math.max(one.startS, other.startS);
  const either = Math.max(one.endS, other.endS) - Math.min(one.startS, other.startS);
  return both <= 0 || either <= 0 ? 0 : both / either;
}

import { tellsOf } from '../../../core/findings/judgeStage.ts';
import type { VehicleScore } from '../../../core/findings/vehicleScore.ts';
import { isReadBlind } from '../../../core/record/blindReading.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import type { WindowKind } from '../../../core/windows/window.ts';
import { countWords } from '../../words/numbers.ts';
import type { HeldCapture } from '../captureStore.ts';
import { openOffers } from './offers.ts';

/** Without one of these no stretch tells anything. */
const NO_SENSOR: ReadonlySet<string> = new Set(['noFrontSensor', 'noRearSensor']);

/** Kinds that a verdict can rest on by themselves. */
const STEADY: ReadonlySet<WindowKind> = new Set(['hold', 'cruise'] as const);

/**
 * What to say where nothing can be told only because none of the steady stretches on offer was accepted: it would be wrong
 * to say that there is none. Null where that is not so.
 */
export function offeredInstead(
  score: VehicleScore | null,
  held: Readonly<Record<string, HeldCapture>>,
  record: VehicleRecord | null,
): string | null {
  if (score === null || record === null || isReadBlind(record)) return null;
  const judged = Object.keys(record.windows).length + Object.keys(record.readings).length;
  if (judged === 0) return null; // nothing was said yet that would have to be put right
  const stage = score.after === null ? 'before' : 'after';
  const { finding, blockers } = (score.after ?? score.before).verdict;
  if (finding !== 'cannotTell' || blockers.some(({ id }) => NO_SENSOR.has(id))) return null;
  const ofStage = (captureId: string): boolean => {
    const kind = record.captures[captureId]?.kind;
    return kind !== undefined && tellsOf(kind, stage);
  };
  // As they were judged: a stretch marked by hand is of no kind until then.
  const marked = score.windows.filter(({ captureId }) => ofStage(captureId));
  if (marked.some(({ score: { kind } }) => kind === 'mixed' || STEADY.has(kind))) return null;
  const offers = Object.values(held).flatMap((capture) =>
    ofStage(capture.captureId) ? openOffers(capture, record) : [],
  );
  const steady = offers.filter(({ window }) => STEADY.has(window.kind)).length;
  if (steady === 0) return null;
  const ones = countWords(steady, 'steady stretch', 'steady stretches');
  return `Cannot tell yet. ${ones} at a raised speed ${steady === 1 ? 'is' : 'are'} on offer: accept ${steady === 1 ? 'it' : 'one'} to have it judged.`;
}

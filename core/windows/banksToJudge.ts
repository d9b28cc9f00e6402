import { banksOf, type Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';

/**
 * The banks a capture can say something about, ascending. Sensors without a bank belong to an engine of which nobody
 * said that it has two: they make one entry, null. Empty where there is no oxygen sensor at all.
 */
export function banksToJudge(capture: Capture): Bank[] {
  const banks: Bank[] = banksOf(capture);
  if (banks.length > 0) return banks;
  const some = capture.channels.some(
    ({ role }) => role === 'upstreamO2' || role === 'upstreamLambda' || role === 'downstreamO2',
  );
  return some ? [null] : [];
}

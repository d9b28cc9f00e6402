import { quantileSorted, sortedCopy } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { span } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** 80 to 105 °C is usual for a warm engine; some accept 70 °C (common practice, no source). */
const WARM_C = 70;
/** Coolant under pressure boils from about 120 °C on (common practice, no source). */
const HOT_C = 118;

export const engineWarm: Condition = {
  id: 'engineWarm',
  words: 'Engine warm',
  help: 'A cold engine runs rich and in open loop, and its converter has not lit. Coolant of 80 to 105 °C is usual; 70 °C is the least taken here.',
  blocker: 'coldEngine',
  kinds: 'all',
  judge({ capture, window }) {
    const coolant = sortedCopy(trackedBetween(engineTrack(capture), 'coolant', window.startS, window.endS));
    if (coolant.length === 0) return notRecorded(this.id, 'Coolant temperature was not recorded.');
    const low = quantileSorted(coolant, 0.05);
    const high = quantileSorted(coolant, 0.95);
    const detail = `Coolant ${span(low, high, 0, '°C')}.`;
    if (low < WARM_C) return notMet(this.id, `${detail} At least ${WARM_C} °C is wanted.`);
    if (high > HOT_C) return notMet(this.id, `${detail} The engine is too hot; stop and look for the cause.`);
    return met(this.id, detail);
  },
};

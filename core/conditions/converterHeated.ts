import { findChannel } from '../capture/capture.ts';
import { seriesOf } from '../capture/series.ts';
import { quantileSorted, sortedCopy } from '../statistics/quantile.ts';
import { engineTrack } from '../windows/engineTrack.ts';
import { round } from '../words/numbers.ts';
import type { Condition, ConditionContext, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { converterHeat } from './converterHeat.ts';

/** A converter below this does not store as it should; above 400 °C it may be judged (common practice, no source). */
const LIT_C = 400;
const COLD_C = 350;

export const converterHeated: Condition = {
  id: 'converterHeated',
  words: 'Converter heated',
  help: 'A converter that has not lit stores nothing, however good it is. Two to three minutes at 2500 1/min, or a drive of 10 to 15 minutes, heat it; idling cools one that sits under the floor.',
  blocker: 'coldConverter',
  kinds: 'all',
  judge(context) {
    return byChannel(this.id, context) ?? byHeatBalance(this.id, context);
  },
};

/** From the data list's own converter temperature, which is a model on most cars (common practice, no source). */
function byChannel(id: string, { capture, bank, window }: ConditionContext): ConditionResult | null {
  const channel = findChannel(capture, 'catalystTemp', bank) ?? findChannel(capture, 'catalystTemp', null);
  if (!channel) return null;
  const values = sortedCopy(seriesOf(channel, window.startS, window.endS).values);
  if (values.length === 0) return null;
  const low = quantileSorted(values, 0.1);
  const detail = `Converter temperature of the data list: ${round(low, 0)} °C at its lowest.`;
  if (low < COLD_C) return notMet(id, `${detail} At least ${LIT_C} °C is wanted.`);
  return met(id, detail);
}

/** From what the engine did before the window. */
function byHeatBalance(id: string, { capture, window }: ConditionContext): ConditionResult {
  const heat = converterHeat(capture);
  if (!heat) return notRecorded(id, 'Engine speed was not recorded, so whether the converter was heated was not recorded either.');
  const track = engineTrack(capture);
  // Halfway through: a hold heats the converter while it is being judged.
  const k = Math.min(track.length - 1, Math.max(0, Math.round((window.startS + window.endS) / 2 / track.stepS)));
  const low = heat.lowest[k] ?? Number.NaN;
  const high = heat.highest[k] ?? Number.NaN;
  const before = `${round(window.startS, 0)} s were recorded before this window`;
  if (high < COLD_C)
    return notMet(
      id,
      `${before}: too little running to heat a converter. By a rough heat balance it has about ${round(high, 0)} °C at most.`,
    );
  if (low >= COLD_C)
    return met(
      id,
      `Running before and in this window heats a converter to about ${round(low, 0)} °C or more (rough heat balance).`,
    );
  return notRecorded(id, `${before}; whether the converter was hot by then was not recorded.`);
}

import { findChannel } from '../capture/capture.ts';
import { seriesOf } from '../capture/series.ts';
import { median, quantileSorted, sortedCopy } from '../statistics/quantile.ts';
import type { Celsius, Seconds } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { round } from '../words/numbers.ts';
import type { Condition, ConditionContext, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { converterHeat } from './converterHeat.ts';

/**
 * Above the first a converter may be judged, below the second it does not store as it should (common practice, no source).
 * Between them nothing is forbidden: neither the data list's own temperature nor a heat balance is that exact.
 */
const LIT_C = 400;
const COLD_C = 350;
/** Coolant this warm that no longer climbs belongs to an engine that has run for long. */
const HOT_THROUGH_C: Celsius = 85;
const STEADY_K = 1;
/** An engine that was not cold as the capture began, and has run at speed for this long by the middle of the window. */
const NOT_COLD_C: Celsius = 75;
const RAN_FOR_S: Seconds = 75;
const AT_SPEED = 1500;

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
  if (low < COLD_C) return notMet(id, `${detail} Below ${COLD_C} °C it does not store as it should.`);
  return met(id, low < LIT_C ? `${detail} ${LIT_C} °C would be surer.` : detail);
}

/** From what the engine did before the window, and where that is not known, from the coolant. */
function byHeatBalance(id: string, context: ConditionContext): ConditionResult {
  const { capture, window } = context;
  const heat = converterHeat(capture);
  if (!heat)
    return notRecorded(
      id,
      'Engine speed was not recorded, so whether the converter was heated was not recorded either.',
    );
  const track = engineTrack(capture);
  // Halfway through: a hold heats the converter while it is being judged.
  const k = Math.min(track.length - 1, Math.max(0, Math.round((window.startS + window.endS) / 2 / track.stepS)));
  const low = heat.lowest[k] ?? Number.NaN;
  const high = heat.highest[k] ?? Number.NaN;
  if (high < COLD_C)
    return notMet(
      id,
      `Too little running to heat a converter: by a rough heat balance it has about ${round(high, 0)} °C at most.`,
    );
  if (low >= COLD_C)
    return met(
      id,
      `Running before and in this window heats a converter to about ${round(low, 0)} °C or more (rough heat balance).`,
    );
  const before = `Only ${round(window.startS, 0)} s were recorded before this window`;
  if (beganAtSpeed(capture))
    return notRecorded(id, `${before}, at speed; whether the converter was hot by then was not recorded.`);
  const coolant = coolantCourse(context);
  const ranS = atSpeedS(context);
  if (ranS >= RAN_FOR_S && (coolant?.first ?? NOT_COLD_C) >= NOT_COLD_C)
    return notRecorded(
      id,
      `${before}, and by its middle ${round(ranS, 0)} s of running at speed; whether the converter was hot by then was not recorded.`,
    );
  if (coolant && coolant.last >= HOT_THROUGH_C && coolant.last - coolant.first <= STEADY_K)
    return notRecorded(
      id,
      `${before}; the engine is hot through, but whether the converter was heated was not recorded.`,
    );
  return notMet(id, `${before}, too little of it at speed to heat a converter for certain.`);
}

/** Seconds at a raised speed up to the middle of the window. */
function atSpeedS({ capture, window }: ConditionContext): Seconds {
  const track = engineTrack(capture);
  const rpms = trackedBetween(track, 'rpm', 0, (window.startS + window.endS) / 2);
  return rpms.filter((rpm) => rpm >= AT_SPEED).length * track.stepS;
}

/** A capture that begins in the middle of a hold or a drive says nothing of the time before. */
function beganAtSpeed(capture: ConditionContext['capture']): boolean {
  const rpms = trackedBetween(engineTrack(capture), 'rpm', 0, 3);
  return rpms.length > 0 && median(rpms) >= AT_SPEED;
}

/** Coolant where the capture began and at the window's end; null where it was not recorded. */
function coolantCourse({
  capture,
  window,
}: ConditionContext): { readonly first: Celsius; readonly last: Celsius } | null {
  const track = engineTrack(capture);
  const first = trackedBetween(track, 'coolant', 0, Math.min(window.endS, 10));
  const last = trackedBetween(track, 'coolant', Math.max(window.startS, window.endS - 10), window.endS);
  return first.length > 0 && last.length > 0 ? { first: median(first), last: median(last) } : null;
}

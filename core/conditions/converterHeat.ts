import type { Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import type { Celsius } from '../units/quantities.ts';
import { engineTrack } from '../windows/engineTrack.ts';
import { at } from '../windows/kinds/windowKindRule.ts';

/** Between which temperatures a converter must lie at each step of the engine's track, after a simple heat balance. */
export interface HeatBounds {
  readonly lowest: Float32Array;
  readonly highest: Float32Array;
}

/** What a converter may have been before the capture began, where coolant says nothing. */
const COLDEST_START_C: Celsius = 100;
const HOTTEST_START_C: Celsius = 600;
const AMBIENT_C: Celsius = 20;

/**
 * A first-order heat balance: the converter goes towards a temperature that engine speed and driving set, the faster
 * the more gas flows. Idle keeps an underfloor one at about 350 °C, 2250 1/min standing at about 500 °C, driving some
 * 80 K more; two minutes at 2250 1/min light a cold one. All figures are orders of magnitude from memory and stand for
 * the trade's rules (2 to 3 minutes at 2500 1/min, or a 10 to 15 minute drive; common practice, no source).
 * Null without engine speed.
 */
export const converterHeat = remember((capture: Capture): HeatBounds | null => {
  const track = engineTrack(capture);
  if (!track.of.rpm) return null;
  const lowest = new Float32Array(track.length);
  const highest = new Float32Array(track.length);
  const coolant = firstFinite(track.of.coolant);
  // Cold coolant: the engine stood for long, and so did the converter. Warm coolant: it may have any past.
  const cold = coolant !== null && coolant < 50;
  let low = cold ? AMBIENT_C : COLDEST_START_C;
  let high = cold ? coolant + 30 : HOTTEST_START_C;
  for (let k = 0; k < track.length; k++) {
    const rpm = at(track, 'rpm', k);
    const running = rpm >= 300;
    const target = running ? 275 + 0.1 * Math.min(rpm, 4000) + (at(track, 'speed', k) > 30 ? 80 : 0) : AMBIENT_C;
    const timeS = running ? 180_000 / Math.max(rpm, 700) : 400;
    const share = Number.isFinite(rpm) ? 1 - Math.exp(-track.stepS / timeS) : 0;
    low += share * (target - low);
    high += share * (target - high);
    lowest[k] = low;
    highest[k] = high;
  }
  return { lowest, highest };
});

function firstFinite(values: Float32Array | null): number | null {
  return values?.find((value) => Number.isFinite(value)) ?? null;
}

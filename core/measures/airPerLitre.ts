import type { Capture } from '../capture/capture.ts';
import type { Seconds } from '../units/quantities.ts';
import { engineTrack } from '../windows/engineTrack.ts';
import { at } from '../windows/kinds/windowKindRule.ts';

/** Density of the intake air at 25 °C and 101.325 kPa, g/L: p M / (R T) with 28.9647 g/mol (checks 3.20, 4.01). */
const AIR_DENSITY = 1.184;
/** Calculated load of an unloaded engine, per cent (from memory, order of magnitude), where none was recorded. */
const USUAL_LOAD = 22;

/**
 * Mass of air that each litre of the engine takes in between two moments, g/L: one filling every second turn, times the
 * load. What a converter can store goes with the size of its engine, so what is counted in air for each litre can be
 * compared between engines, with or without an air-flow reading. Null without engine speed; moments at which it was
 * silent count nothing.
 */
export function airPerLitre(capture: Capture, startS: Seconds, endS: Seconds): number | null {
  const track = engineTrack(capture);
  if (!track.of.rpm) return null;
  let sum = 0;
  for (let k = Math.floor(startS / track.stepS); k * track.stepS < endS; k++) {
    const rpm = at(track, 'rpm', k);
    const load = at(track, 'load', k);
    const overlap = Math.min(endS, (k + 1) * track.stepS) - Math.max(startS, k * track.stepS);
    if (!(rpm >= 0) || overlap <= 0) continue;
    sum += ((AIR_DENSITY * rpm) / 120) * ((load > 0 ? load : USUAL_LOAD) / 100) * overlap;
  }
  return sum;
}

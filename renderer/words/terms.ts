// Words of the window that the evidence sheet does not need, or says at greater length. The rest of the dictionary is
// core/evidence/words/terms.ts, so that screen and sheet say the same.

import type { VehicleEntry } from '../../core/bridge/shellMessages.ts';
import type { Temperature } from '../../core/record/schema.ts';
import type { WindowOrigin } from '../../core/windows/window.ts';
import { countWords, KEPT_SPACE, numberWords } from './numbers.ts';
import { instantWords } from './times.ts';

/** Short, for the line under a window's name. */
export const ORIGIN_WORDS: Readonly<Record<WindowOrigin, string>> = {
  suggested: 'offered',
  accepted: 'offer accepted',
  changed: 'offer changed',
  byHand: 'marked by hand',
};

export const TEMPERATURE_UNITS: Readonly<Record<Temperature['unit'], string>> = { C: '°C', F: '°F', K: 'K' };

/** As it was typed, in the unit it was typed in. */
export function temperatureWords(temperature: Temperature): string {
  const digits = Number.isInteger(temperature.value) ? 0 : 1;
  return `${numberWords(temperature.value, digits)}${KEPT_SPACE}${TEMPERATURE_UNITS[temperature.unit]}`;
}

/** The line under a vehicle's name in a list of vehicles. */
export function vehicleWords({ captures, savedAt, damaged }: VehicleEntry): string {
  if (damaged !== undefined) return 'damaged; see what can be done';
  return `${countWords(captures, 'capture')}, saved ${instantWords(savedAt)}`;
}

// Quantities as a sheet prints them: one function per quantity, so that the same thing reads the same everywhere.

import type { Temperature } from '../../record/schema.ts';
import { convert } from '../../units/convert.ts';
import type { Celsius, KelvinDifference, Seconds } from '../../units/quantities.ts';
import type { DecimalSign } from '../sheet.ts';
import { KEPT_SPACE, showNumber } from './numbers.ts';

export const TEMPERATURE_SYMBOLS: Readonly<Record<Temperature['unit'], string>> = { C: '°C', F: '°F', K: 'K' };

/** A temperature in °C as a number of another unit. */
export function temperatureIn(celsius: Celsius, unit: Temperature['unit']): number {
  return convert(celsius, '°C', TEMPERATURE_SYMBOLS[unit]) ?? Number.NaN;
}

/** A difference of temperatures, K, as a number of another unit: no offset, only the size of the degree. */
export function differenceIn(kelvin: KelvinDifference, unit: Temperature['unit']): number {
  return unit === 'F' ? kelvin * 1.8 : kelvin;
}

/** "290 °F", "143.3 °C": as it was typed, in the unit it was typed in. */
export function typedTemperature({ value, unit }: Temperature, sign: DecimalSign): string {
  return `${showNumber(value, Number.isInteger(value) ? 0 : 1, sign)}${KEPT_SPACE}${TEMPERATURE_SYMBOLS[unit]}`;
}

/** "61.2 to 121.2 s". */
export function stretchWords(startS: Seconds, endS: Seconds, sign: DecimalSign): string {
  return `${showNumber(startS, 1, sign)} to ${showNumber(endS, 1, sign)}${KEPT_SPACE}s`;
}

/** "412.8 s", "6 min 53 s" from two minutes on, "1 h 6 min" from an hour on. */
export function durationWords(durationS: Seconds, sign: DecimalSign): string {
  if (durationS < 120) return `${showNumber(durationS, 1, sign)}${KEPT_SPACE}s`;
  const whole = Math.round(durationS);
  if (whole < 3600) return `${Math.floor(whole / 60)}${KEPT_SPACE}min ${whole % 60}${KEPT_SPACE}s`;
  const minutes = Math.round(whole / 60);
  return `${Math.floor(minutes / 60)}${KEPT_SPACE}h ${minutes % 60}${KEPT_SPACE}min`;
}

/** An RFC 3339 time as people read it, to the minute and with its offset: "2026-11-24 08:05 +01:00". */
export function instantWords(instant: string): string {
  const match = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:?\d{2})?$/.exec(instant);
  if (match === null) return instant;
  const [, day, time, zone] = match;
  return [day, time, zone === 'Z' ? 'UTC' : zone].filter((part) => part !== undefined).join(' ');
}

/** The day of an RFC 3339 time: "2026-11-24". */
export function dayOf(instant: string): string {
  return instant.slice(0, 10);
}

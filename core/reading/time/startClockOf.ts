import type { TimePlan } from './timePlan.ts';

/**
 * The clock at the first sample, ISO 8601, or null where the file has none. A time of day without a date gives a time
 * alone ("14:03:07.5"); a moment without a zone is a local time and gets no zone.
 */
export function startClockOf(plan: TimePlan, firstS: number, firstCell: string): string | null {
  if (plan.kind === 'rate' || !Number.isFinite(firstS)) return null;
  if (plan.kind === 'number') return plan.epoch ? `${dateAndTime(firstS)}Z` : null;
  if (plan.kind === 'dateAndClock') return dateAndTime(firstS);
  if (plan.form.kind === 'clock') return timeOfDay(firstS);
  if (plan.form.kind !== 'instant') return null;
  const zone = plan.form.zone?.(firstCell) ?? null;
  if (zone === null) return dateAndTime(firstS);
  return `${dateAndTime(firstS + offsetOf(zone))}${zone}`;
}

function offsetOf(zone: string): number {
  if (zone === 'Z') return 0;
  const sign = zone.startsWith('-') ? -1 : 1;
  return sign * (Number(zone.slice(1, 3)) * 3600 + Number(zone.slice(4, 6)) * 60);
}

/** A day since 1970 and its time, to the microsecond, without the zeros at the end. */
function dateAndTime(seconds: number): string {
  const micro = Math.round(seconds * 1e6);
  const day = Math.floor(micro / 86400e6);
  const { year, month, date } = civil(day);
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}T${timeOfDay((micro - day * 86400e6) / 1e6)}`;
}

function timeOfDay(seconds: number): string {
  const micro = Math.round(seconds * 1e6);
  const whole = Math.floor(micro / 1e6);
  const fraction = String(micro - whole * 1e6)
    .padStart(6, '0')
    .replace(/0+$/, '');
  const clock = `${two(Math.floor(whole / 3600) % 24)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
  return fraction === '' ? clock : `${clock}.${fraction}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

/** Calendar date of a day number since 1970-01-01; the inverse of dayNumber. */
function civil(day: number): { year: number; month: number; date: number } {
  const shifted = day + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const part = Math.floor((5 * dayOfYear + 2) / 153);
  const month = part < 10 ? part + 3 : part - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    date: dayOfYear - Math.floor((153 * part + 2) / 5) + 1,
  };
}

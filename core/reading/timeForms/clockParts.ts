// The arithmetic that the time forms share. Whole ticks are added before the one division, so that a clock time has the
// bits of the decimal number of seconds that it means.

/** Seconds of whole hours, minutes and seconds plus a fraction given as its digits ("123" of .123; "" for none). */
export function secondsOf(hours: number, minutes: number, seconds: number, fraction: string): number {
  const whole = hours * 3600 + minutes * 60 + seconds;
  if (fraction === '') return whole;
  const digits = fraction.slice(0, 9);
  const scale = 10 ** digits.length;
  return (whole * scale + Number(digits)) / scale;
}

/** Days since 1970-01-01 of a day of the Gregorian calendar, or NaN where there is no such day. */
export function dayNumber(year: number, month: number, day: number): number {
  if (!(month >= 1 && month <= 12) || !(day >= 1 && day <= daysInMonth(year, month))) return Number.NaN;
  // Years that begin in March put the leap day last; 400 years repeat.
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** Days of a month, 1 to 12, in the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** A four-digit year for one of two digits: 70 to 99 are of the last century. */
export function fullYear(year: number): number {
  if (year >= 100) return year;
  return year >= 70 ? 1900 + year : 2000 + year;
}

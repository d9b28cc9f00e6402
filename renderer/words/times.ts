import { KEPT_SPACE, numberWords } from './numbers.ts';

/** How long something lasts: "0.8 s", "60 s", "6 min 53 s", "2 h 40 min". */
export function durationWords(durationS: number): string {
  if (durationS < 10) return `${numberWords(durationS, 1)}${KEPT_SPACE}s`;
  const whole = Math.round(durationS);
  if (whole < 120) return `${whole}${KEPT_SPACE}s`;
  if (whole < 3600) return pair(Math.floor(whole / 60), 'min', whole % 60, 's');
  const minutes = Math.round(whole / 60);
  return pair(Math.floor(minutes / 60), 'h', minutes % 60, 'min');
}

/** A date and time of the record by the reader's clock, in the language of the program: "24 Nov 2026, 14:05". */
export function instantWords(instant: string): string {
  const date = new Date(instant);
  if (Number.isNaN(date.getTime())) return instant;
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  }).format(date);
}

function pair(large: number, largeUnit: string, small: number, smallUnit: string): string {
  const first = `${large}${KEPT_SPACE}${largeUnit}`;
  return small === 0 ? first : `${first} ${small}${KEPT_SPACE}${smallUnit}`;
}

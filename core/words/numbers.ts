// How numbers stand in sentences. English decimal point; a no-break space never separates thousands, since none here
// are that large.

/** A number with a fixed count of digits after the point; "-0" never appears. Not finite: "not known". */
export function round(value: number, digits: number): string {
  if (!Number.isFinite(value)) return 'not known';
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** A whole number from 0 to 100 for a share. */
export function percent(share: number): string {
  return `${round(100 * share, 0)} %`;
}

/** "88 to 91 °C", or "88 °C" where both ends read the same. */
export function span(low: number, high: number, digits: number, unit: string): string {
  const [a, b] = [round(low, digits), round(high, digits)];
  return a === b ? `${a} ${unit}` : `${a} to ${b} ${unit}`;
}

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** "one window", "two windows", "13 windows". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${SMALL[count] ?? count} ${count === 1 ? one : many}`;
}

/** The same text with its first letter large. */
export function startSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The same text with its first letter small, for the middle of a sentence. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

// Numbers as people read them: a true minus sign, a space before the unit, a fixed count of digits so that columns
// line up. A measure's unit '1' is a pure number and is not written.

/** A space that keeps a number and its unit on one line. */
export const KEPT_SPACE = '\u00a0';

/** "0.45", "−3.1", "12 400". `digits` is the count after the decimal sign. */
export function numberWords(value: number, digits: number): string {
  const fixed = Math.abs(value).toFixed(digits);
  const negative = value < 0 && Number(fixed) !== 0;
  const [whole = '0', part] = fixed.split('.');
  // Groups of three, none for four digits (22nd CGPM, resolution 10).
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, KEPT_SPACE) : whole;
  return `${negative ? '−' : ''}${grouped}${part === undefined ? '' : `.${part}`}`;
}

/** "88 °C", "0.45 V"; a pure number stands alone. */
export function withUnit(value: number, unit: string, digits: number): string {
  return unit === '1' || unit === '' ? numberWords(value, digits) : `${numberWords(value, digits)}${KEPT_SPACE}${unit}`;
}

/** "0.00 to 0.06", with the digits of its value. */
export function intervalWords(interval: readonly [number, number], digits: number): string {
  return `${numberWords(interval[0], digits)} to ${numberWords(interval[1], digits)}`;
}

/** A signed difference: "+12", "−3.1", "0". */
export function differenceWords(value: number, digits: number): string {
  const words = numberWords(value, digits);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${words}` : words;
}

/** "97 %" of a probability; never 0 or 100, which no evidence gives. */
export function probabilityWords(probability: number): string {
  if (probability < 0.01) return `under 1${KEPT_SPACE}%`;
  if (probability > 0.99) return `over 99${KEPT_SPACE}%`;
  return `${Math.round(probability * 100)}${KEPT_SPACE}%`;
}

/** What a person typed as a number, with either decimal sign; null where it is none. Groups of digits are not read. */
export function typedNumber(typed: string): number | null {
  const plain = typed.trim().replace('−', '-').replace(',', '.');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** "1.4 MB", "820 kB"; powers of ten, as files are sold and sent. */
export function bytesWords(bytes: number): string {
  if (bytes < 1000) return `${bytes}${KEPT_SPACE}B`;
  if (bytes < 1_000_000) return `${numberWords(bytes / 1000, 0)}${KEPT_SPACE}kB`;
  if (bytes < 1_000_000_000) return `${numberWords(bytes / 1_000_000, 1)}${KEPT_SPACE}MB`;
  return `${numberWords(bytes / 1_000_000_000, 2)}${KEPT_SPACE}GB`;
}

/** "1 window", "2 windows": the word with an s, or the plural that is given. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${numberWords(count, 0)}${KEPT_SPACE}${count === 1 ? one : many}`;
}

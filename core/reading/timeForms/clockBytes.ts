// Clock times straight from bytes, for the row loop. What is not exactly HH:MM:SS with or without a fraction gives NaN
// and is read as text; both ways give the same bits.

const COLON = 58;
const FRACTIONS = Float64Array.from({ length: 10 }, (_, d) => 10 ** d);

/** Two digits at `at`, or NaN. */
export function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = (bytes[at] ?? 0) - 48;
  const ones = (bytes[at + 1] ?? 0) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}

/**
 * Seconds of the clock time from `start` up to `end`, `days` whole days added before the fraction is, so that there is
 * one rounding; NaN where the bytes are not of that form.
 */
export function clockBytes(bytes: Uint8Array, start: number, end: number, days: number): number {
  const length = end - start;
  if (length < 8 || bytes[start + 2] !== COLON || bytes[start + 5] !== COLON) return Number.NaN;
  const hours = twoDigits(bytes, start);
  const minutes = twoDigits(bytes, start + 3);
  const seconds = twoDigits(bytes, start + 6);
  if (!(hours <= 24 && minutes <= 59 && seconds <= 60)) return Number.NaN;
  const whole = days * 86400 + hours * 3600 + minutes * 60 + seconds;
  if (length === 8) return whole;
  const sign = bytes[start + 8];
  if ((sign !== 46 && sign !== 44 && sign !== COLON) || length < 10 || length > 18) return Number.NaN;
  let fraction = 0;
  for (let pos = start + 9; pos < end; pos++) {
    const d = (bytes[pos] ?? 0) - 48;
    if (d < 0 || d > 9) return Number.NaN;
    fraction = fraction * 10 + d;
  }
  const scale = FRACTIONS[length - 9] ?? 1;
  return (whole * scale + fraction) / scale;
}

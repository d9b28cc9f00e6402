const LETTER_VALUES: Readonly<Record<string, number>> = Object.fromEntries([
  ...[...'ABCDEFGH'].map((letter, index) => [letter, index + 1] as const),
  ...[...'JKLMN'].map((letter, index) => [letter, index + 1] as const),
  ['P', 7],
  ['R', 9],
  ...[...'STUVWXYZ'].map((letter, index) => [letter, index + 2] as const),
]);

const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/** True for 17 characters of the vehicle number's alphabet: capitals and digits without I, O and Q (ISO 3779). */
export function looksLikeVehicleNumber(text: string): boolean {
  return /^[0-9A-HJ-NPR-Z]{17}$/.test(text);
}

/**
 * The check digit that position 9 should hold by 49 CFR 565.15 (from memory of the regulation): letters count as
 * numbers, weights 8 7 6 5 4 3 2 10 0 9 8 7 6 5 4 3 2, the sum modulo 11, and 10 is written X. Null for text that is no
 * vehicle number. Vehicles outside North America need not obey, so a difference is a hint, never a refusal.
 */
export function vehicleNumberCheckDigit(text: string): string | null {
  if (!looksLikeVehicleNumber(text)) return null;
  let sum = 0;
  for (let i = 0; i < 17; i++) {
    const character = text[i] ?? '0';
    sum += (LETTER_VALUES[character] ?? Number(character)) * (WEIGHTS[i] ?? 0);
  }
  const rest = sum % 11;
  return rest === 10 ? 'X' : String(rest);
}

/** The vehicle number in an answer of service 09 item 02 on CAN: 49 02, a count, then 17 characters. Null otherwise. */
export function vehicleNumberIn(message: Uint8Array): string | null {
  if (message[0] !== 0x49 || message[1] !== 0x02) return null;
  const text = String.fromCharCode(...message.subarray(3, 20));
  return looksLikeVehicleNumber(text) ? text : null;
}

/**
 * Texts that look like a vehicle number: 17 characters of its alphabet that stand alone, with a letter and at least four
 * digits among them (that every number has so many digits is common practice, no source). May take for one what is none.
 */
export function vehicleNumbersInText(text: string): string[] {
  const runs = text.match(/(?<![0-9A-Za-z])[0-9A-HJ-NPR-Z]{17}(?![0-9A-Za-z])/g) ?? [];
  return runs.filter((run) => /[A-Z]/.test(run) && run.replace(/\D/g, '').length >= 4);
}

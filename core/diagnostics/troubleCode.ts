const LETTERS = ['P', 'C', 'B', 'U'] as const;

/**
 * The trouble code that two bytes stand for (SAE J2012 / ISO 15031-6): bits 15 and 14 choose P, C, B or U, bits 13 and
 * 12 the first digit, the rest three hexadecimal digits. 04 20 is P0420, C1 00 is U0100.
 */
export function troubleCode(high: number, low: number): string {
  const letter = LETTERS[(high >> 6) & 3] ?? 'P';
  const digits = ((high & 0x0f) * 256 + low).toString(16).toUpperCase().padStart(3, '0');
  return `${letter}${(high >> 4) & 3}${digits}`;
}

/** Services that answer with trouble codes, by the first byte of the answer. */
export const CODE_SERVICES: Readonly<Record<number, 'confirmed' | 'pending' | 'permanent'>> = {
  67: 'confirmed',
  71: 'pending',
  74: 'permanent',
};

/**
 * Codes in an answer of service 03, 07 or 0A on a CAN bus: the service byte, a count byte, then two bytes a code.
 * 00 00 is padding, not a code. Before CAN the count byte is missing: an answer of odd length after the service byte
 * has it, one of even length has not. Another service gives an empty list.
 */
export function troubleCodesIn(message: Uint8Array): string[] {
  if (message[0] === undefined || !(message[0] in CODE_SERVICES)) return [];
  const counted = (message.length - 1) % 2 === 1;
  const codes: string[] = [];
  for (let at = counted ? 2 : 1; at + 1 < message.length; at += 2) {
    const high = message[at] ?? 0;
    const low = message[at + 1] ?? 0;
    if (high !== 0 || low !== 0) codes.push(troubleCode(high, low));
  }
  return codes;
}

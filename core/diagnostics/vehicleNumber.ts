/** True for 17 characters of the vehicle number's alphabet: capitals and digits without I, O and Q (ISO 3779). */
function looksLikeVehicleNumber(text: string): boolean {
  return /^[0-9A-HJ-NPR-Z]{17}$/.test(text);
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

/** Who a diagnostic frame is from, on an 11-bit or 29-bit bus. */
export interface DiagnosticAddress {
  readonly kind: 'request' | 'answer';
  /** Number of the control unit that asks or answers, or null for a question to all. */
  readonly unit: number | null;
}

/**
 * The diagnostic meaning of a bus identifier (ISO 15765-4): 7DF asks all, 7E0 to 7E7 ask one, 7E8 to 7EF answer;
 * 18DB33F1 asks all, 18DA xx F1 asks one, 18DA F1 xx answers (29-bit forms from memory of the standard). Null for
 * every other identifier: ordinary traffic of the bus.
 */
export function diagnosticAddress(identifier: number, extended: boolean): DiagnosticAddress | null {
  if (!extended) {
    if (identifier === 0x7df) return { kind: 'request', unit: null };
    if (identifier >= 0x7e0 && identifier <= 0x7e7) return { kind: 'request', unit: identifier - 0x7e0 };
    if (identifier >= 0x7e8 && identifier <= 0x7ef) return { kind: 'answer', unit: identifier - 0x7e8 };
    return null;
  }
  if (identifier === 0x18db33f1) return { kind: 'request', unit: null };
  const form = identifier >>> 16;
  if (form !== 0x18da) return null;
  const target = (identifier >>> 8) & 0xff;
  const source = identifier & 0xff;
  if (source === 0xf1) return { kind: 'request', unit: target };
  if (target === 0xf1) return { kind: 'answer', unit: source };
  return null;
}

/** One frame of the bus. */
export interface LoggedFrame {
  /** Seconds since 1970, as the log has it. */
  readonly timeS: number;
  readonly bus: string;
  readonly identifier: number;
  /** True for 29-bit identifiers: eight hexadecimal digits in the text. */
  readonly extended: boolean;
  /** Empty for a remote request, which carries no data. */
  readonly data: Uint8Array;
}

const LINE =
  /^\((\d{1,12}\.\d{1,9})\) (\S{1,32}) ([0-9A-Fa-f]{3}|[0-9A-Fa-f]{8})(##[0-9A-Fa-f]|#)(R[0-9A-F]?|[0-9A-Fa-f.]{0,190})(?: [RT])?\s*$/;

/**
 * Reads one line of the SocketCAN log text form: time in brackets, interface, identifier of three (11-bit) or eight
 * (29-bit) hexadecimal digits, `#` and the data, `#R` for a remote request, `##` and a flag digit for a frame with
 * flexible data rate; a trailing R or T is a direction. Null for any other text, and for an odd count of digits.
 */
export function logLine(line: string): LoggedFrame | null {
  const match = LINE.exec(line);
  if (!match) return null;
  const [, time = '', bus = '', identifier = '', , body = ''] = match;
  const data = body.startsWith('R') ? new Uint8Array() : hexBytes(body.replaceAll('.', ''));
  if (!data) return null;
  return {
    timeS: Number(time),
    bus,
    identifier: Number.parseInt(identifier, 16),
    extended: identifier.length === 8,
    data,
  };
}

function hexBytes(text: string): Uint8Array | null {
  if (text.length % 2 !== 0) return null;
  const bytes = new Uint8Array(text.length / 2);
  for (let i = 0; i < bytes.length; i++) bytes[i] = Number.parseInt(text.slice(i * 2, i * 2 + 2), 16);
  return bytes;
}

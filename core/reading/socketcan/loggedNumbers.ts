import { diagnosticAddress } from '../../diagnostics/canAddress.ts';
import { MessageAssembler } from '../../diagnostics/isoTp.ts';
import { vehicleNumberIn } from '../../diagnostics/vehicleNumber.ts';
import { logLine } from './logLine.ts';

/** A longer line is no frame. */
const LONGEST_LINE = 400;

/**
 * Vehicle numbers that control units told in a log of the diagnostic connector: they stand there in hexadecimal digits, over
 * several frames, where nobody sees them. Feed its text in pieces, cut anywhere, then ask for `finished`.
 */
export class LoggedNumbers {
  private readonly assembler = new MessageAssembler();
  private readonly found = new Set<string>();
  private open = '';

  take(text: string): void {
    const lines = (this.open + text).split('\n');
    this.open = (lines.pop() ?? '').slice(0, LONGEST_LINE + 1);
    for (const line of lines) this.takeLine(line);
  }

  /** Each once. */
  finished(): string[] {
    this.takeLine(this.open);
    this.open = '';
    return [...this.found];
  }

  private takeLine(line: string): void {
    const frame = line.length <= LONGEST_LINE ? logLine(line) : null;
    if (frame === null || diagnosticAddress(frame.identifier, frame.extended)?.kind !== 'answer') return;
    const result = this.assembler.take(`${frame.bus} ${frame.identifier}`, frame.data);
    const number = result.kind === 'message' ? vehicleNumberIn(result.payload) : null;
    if (number !== null) this.found.add(number);
  }
}

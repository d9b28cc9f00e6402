/** A fault of the program as it is written to the process's own output, for its makers. */
export function faultWords(fault: unknown): string {
  return `${fault instanceof Error ? fault.stack : String(fault)}\n`;
}

/** What the fuel system says it does. */
export type Loop = 'closed' | 'openCold' | 'openByLoadOrFuelCut' | 'openByFault' | 'closedWithFault' | 'unknown';

/** One code a byte, one bit at a time; any other value is unknown, never closed (SAE J1979 PID 03, check 1.03). */
const LOOPS: ReadonlyMap<number, Loop> = new Map([
  [1, 'openCold'],
  [2, 'closed'],
  [4, 'openByLoadOrFuelCut'],
  [8, 'openByFault'],
  [16, 'closedWithFault'],
]);

/** Meaning of a fuel system status. */
export function loopOf(status: number): Loop {
  return LOOPS.get(status) ?? 'unknown';
}

import type { MonitorName, MonitorStatus } from '../capture/reported.ts';

/** Monitors that data item 01 speaks of, in the order of its bits. Bits of byte B, then of bytes C and D. */
const CONTINUOUS = ['misfire', 'fuelSystem', 'components'] as const satisfies readonly MonitorName[];
// Bit 4 was the refrigerant of the air conditioning; newer texts give it to the petrol particulate filter (from memory).
const ONCE_A_DRIVE = [
  'catalyst',
  'heatedCatalyst',
  'evap',
  'secondaryAir',
  'refrigerantOrParticulateFilter',
  'o2Sensor',
  'o2SensorHeater',
  'egr',
] as const satisfies readonly MonitorName[];

/**
 * Reads the four data bytes of item 01 (SAE J1979). In bytes B and D a set bit means NOT complete. For compression
 * ignition bytes C and D have another meaning, so only the continuous monitors are told. Fewer than four bytes: null.
 */
export function monitorStatus(data: Uint8Array): MonitorStatus | null {
  const [a, b, c, d] = data;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
  const ignition = b & 0x08 ? 'compression' : 'spark';
  const supported: MonitorName[] = [];
  const incomplete: MonitorName[] = [];
  CONTINUOUS.forEach((name, bit) => {
    if (!(b & (1 << bit))) return;
    supported.push(name);
    if (b & (0x10 << bit)) incomplete.push(name);
  });
  if (ignition === 'spark') {
    ONCE_A_DRIVE.forEach((name, bit) => {
      if (!(c & (1 << bit))) return;
      supported.push(name);
      if (d & (1 << bit)) incomplete.push(name);
    });
  }
  return { lampOn: (a & 0x80) !== 0, codes: a & 0x7f, ignition, supported, incomplete };
}

/** States of a fuel system as SAE J1979 data item 03 codes them, one bit at a time. */
export const FUEL_SYSTEM_STATES = [
  { code: 0x01, id: 'openLoopCold', words: 'open loop, not warm yet', closed: false },
  { code: 0x02, id: 'closedLoop', words: 'closed loop', closed: true },
  { code: 0x04, id: 'openLoopLoadOrFuelCut', words: 'open loop, load or fuel cut', closed: false },
  { code: 0x08, id: 'openLoopFault', words: 'open loop, system fault', closed: false },
  { code: 0x10, id: 'closedLoopWithSensorFault', words: 'closed loop, sensor fault', closed: true },
] as const;

export type FuelSystemState = (typeof FUEL_SYSTEM_STATES)[number];

/** The state that a status byte codes, or null: 0 is "not present", and any other byte is unknown, never closed. */
export function fuelSystemState(code: number): FuelSystemState | null {
  return FUEL_SYSTEM_STATES.find((state) => state.code === code) ?? null;
}

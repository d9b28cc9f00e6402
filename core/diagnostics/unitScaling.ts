/** How a unit-and-scaling id turns the two bytes of a test result into a number. */
export interface UnitScaling {
  readonly id: number;
  readonly perBit: number;
  readonly unit: string;
  readonly offset: number;
  readonly signed: boolean;
}

// SAE J1979 appendix of unit and scaling ids, as an open decoder carries it. Ids from 80 are the signed twins.
const ROWS: readonly (readonly [number, number, string, number, boolean])[] = [
  [0x01, 1, '1', 0, false],
  [0x02, 0.1, '1', 0, false],
  [0x03, 0.01, '1', 0, false],
  [0x04, 0.001, '1', 0, false],
  [0x05, 2 ** -15, '1', 0, false],
  [0x06, 0.00030517578125, '1', 0, false],
  [0x07, 0.25, '1/min', 0, false],
  [0x08, 0.01, 'km/h', 0, false],
  [0x09, 1, 'km/h', 0, false],
  [0x0a, 0.122, 'mV', 0, false],
  [0x0b, 0.001, 'V', 0, false],
  [0x0c, 0.01, 'V', 0, false],
  [0x0d, 1 / 256, 'mA', 0, false],
  [0x0e, 0.001, 'A', 0, false],
  [0x0f, 0.01, 'A', 0, false],
  [0x10, 1, 'ms', 0, false],
  [0x11, 100, 'ms', 0, false],
  [0x12, 1, 's', 0, false],
  [0x13, 0.001, 'Ω', 0, false],
  [0x14, 1, 'Ω', 0, false],
  [0x15, 1000, 'Ω', 0, false],
  [0x16, 0.1, '°C', -40, false],
  [0x1e, 2 ** -15, '1', 0, false],
  [0x20, 1 / 256, '1', 0, false],
  [0x21, 0.001, 'Hz', 0, false],
  [0x22, 1, 'Hz', 0, false],
  [0x24, 1, '1', 0, false],
  [0x26, 0.1, 'mV/ms', 0, false],
  [0x27, 0.01, 'g/s', 0, false],
  [0x28, 1, 'g/s', 0, false],
  [0x2b, 1, '1', 0, false],
  [0x2f, 0.01, '%', 0, false],
  [0x30, 0.001526, '%', 0, false],
  [0x34, 1, 'min', 0, false],
  [0x35, 10, 'ms', 0, false],
  [0x36, 0.01, 'g', 0, false],
  [0x37, 0.1, 'g', 0, false],
  [0x38, 1, 'g', 0, false],
  [0x81, 1, '1', 0, true],
  [0x82, 0.1, '1', 0, true],
  [0x83, 0.01, '1', 0, true],
  [0x84, 0.001, '1', 0, true],
  [0x85, 2 ** -15, '1', 0, true],
  [0x8a, 0.122, 'mV', 0, true],
  [0x8b, 0.001, 'V', 0, true],
  [0x8c, 0.01, 'V', 0, true],
  [0x8d, 1 / 256, 'mA', 0, true],
  [0x90, 1, 'ms', 0, true],
  [0x96, 0.1, '°C', 0, true],
  [0xb1, 2, 'mV/s', 0, true],
];

const BY_ID: ReadonlyMap<number, UnitScaling> = new Map(
  ROWS.map(([id, perBit, unit, offset, signed]) => [id, { id, perBit, unit, offset, signed }]),
);

/** The scaling with this id, or null for an id that the table does not know. */
export function unitScaling(id: number): UnitScaling | null {
  return BY_ID.get(id) ?? null;
}

/** The number that a raw 16-bit value stands for: two's complement where the scaling is signed. */
export function scaled(scaling: UnitScaling, raw: number): number {
  const value = scaling.signed && raw >= 0x8000 ? raw - 0x10000 : raw;
  return value * scaling.perBit + scaling.offset;
}

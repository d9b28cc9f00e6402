// What a vehicle said of itself in a log of the diagnostic connector, besides measured values.

/** Monitors of SAE J1979 data item 01. */
export type MonitorName =
  | 'misfire'
  | 'fuelSystem'
  | 'components'
  | 'catalyst'
  | 'heatedCatalyst'
  | 'evap'
  | 'secondaryAir'
  | 'refrigerantOrParticulateFilter'
  | 'o2Sensor'
  | 'o2SensorHeater'
  | 'egr';

/** What data item 01 says: the lamp, the number of codes, and which monitors exist and have not completed. */
export interface MonitorStatus {
  readonly lampOn: boolean;
  readonly codes: number;
  readonly ignition: 'spark' | 'compression';
  readonly supported: readonly MonitorName[];
  /** Supported monitors that are not complete: an open readiness question. */
  readonly incomplete: readonly MonitorName[];
}

/** One on-board test: what was measured, between which limits, and whether it passed. */
export interface TestResult {
  /** Monitor: 01 to 10 oxygen sensors, 21 to 24 converters of banks 1 to 4, 41 to 50 sensor heaters, A1 on misfire. */
  readonly monitor: number;
  readonly test: number;
  /** Unit of the numbers below, or null where the scaling id is unknown; they are then raw counts. */
  readonly unit: string | null;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly passed: boolean;
}

/** Codes, readiness and tests, as the control units answered. */
export interface Reported {
  readonly codes: readonly { readonly code: string; readonly status: 'confirmed' | 'pending' | 'permanent' }[];
  /** Seventeen characters, or null where the log holds none. Private: exports leave its last six out. */
  readonly vehicleNumber: string | null;
  readonly monitors: MonitorStatus | null;
  readonly tests: readonly TestResult[];
}

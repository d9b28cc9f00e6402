import { RECORD_VERSION, type VehicleRecord } from './schema.ts';

/** What a new vehicle is made from. The caller brings the id and the clock: core has neither. */
export interface NewVehicle {
  /** 1 to 64 characters, unlike every other vehicle's. */
  readonly id: string;
  /** What the shop calls it; not empty. */
  readonly name: string;
  /** RFC 3339 with offset. */
  readonly createdAt: string;
}

/** An empty record: nothing known yet but a name. Every field that was not recorded is null, '' or 'unknown'. */
export function newVehicle({ id, name, createdAt }: NewVehicle): VehicleRecord {
  if (name.trim() === '') throw new RangeError('a vehicle needs a name');
  return {
    format: 'tailtrace-vehicle',
    version: RECORD_VERSION,
    id,
    createdAt,
    archived: false,
    identity: {
      name,
      description: '',
      modelYear: null,
      mileage: null,
      vin: '',
      plate: '',
      customer: '',
      complaint: '',
      firstSold: null,
      rearSensor: 'unknown',
      engineLitres: null,
    },
    costs: { currency: '', converterPrice: 0, labourHour: 0 },
    papers: {
      make: '',
      reason: '',
      inspectionOrdered: 'unknown',
      statementSigned: 'unknown',
      partFitted: '',
      fittedOn: null,
      oldPartTag: '',
    },
    bricks: {},
    troubleCodes: {},
    captures: {},
    windows: {},
    readings: {},
    notes: {},
    findings: {},
    opinions: {},
    blindReading: null,
  };
}

import type { CaptureRef, Temperature } from '../../record/schema.ts';

/** Surface temperatures that go with a sample drive, as a person would have read them. */
export interface SampleReading {
  readonly bank: 1 | 2 | null;
  readonly brick: number | null;
  readonly inlet: Temperature;
  readonly outlet: Temperature;
  readonly rpm: number | null;
  readonly emissivity: number | null;
}

/** One of the invented drives in assets/drives. */
export interface SampleDrive {
  readonly name: string;
  /** File in assets/drives. */
  readonly file: string;
  readonly title: string;
  /** One sentence for the list; begins with "Invented". */
  readonly words: string;
  /** The vehicle of the story: drives with the same one belong into one record. */
  readonly vehicle: string;
  readonly kind: CaptureRef['kind'];
  readonly troubleCodes: readonly string[];
  readonly readings: readonly SampleReading[];
}

/** Every sample drive, in the order in which people see them. All are made by core/simulation. */
export const SAMPLE_DRIVES: readonly SampleDrive[] = [
  {
    name: 'van-before',
    file: 'van-before.csv',
    title: 'Van 14, before the repair',
    words: 'Invented: a one-bank courier van with code P0420, before the repair; ten rows a second.',
    vehicle: 'Van 14',
    kind: 'before',
    troubleCodes: ['P0420'],
    readings: [reading(268, 251)],
  },
  {
    name: 'van-after',
    file: 'van-after.csv',
    title: 'Van 14, after the repair',
    words: 'Invented: the same van with its replacement converter, same test, same instrument.',
    vehicle: 'Van 14',
    kind: 'after',
    troubleCodes: [],
    readings: [reading(262, 301)],
  },
  {
    name: 'van-twin',
    file: 'van-twin.csv',
    title: 'Van 9, the healthy twin',
    words: 'Invented: a sound van of the same depot, recorded with a slow data list of about three rows a second.',
    vehicle: 'Van 14',
    kind: 'knownGood',
    troubleCodes: [],
    readings: [],
  },
  {
    name: 'car-two-banks',
    file: 'car-two-banks.txt',
    title: 'Car with two banks',
    words: 'Invented: a six-cylinder car with two banks and code P0430; semicolons, decimal commas, clock times.',
    vehicle: 'Car with two banks',
    kind: 'before',
    troubleCodes: ['P0430'],
    readings: [],
  },
  {
    name: 'van-trap',
    file: 'van-trap.tsv',
    title: 'Van 21, not what it looks like',
    words: 'Invented: a van with code P0420 whose rear sensor swings; look at the front sensor and the exhaust first.',
    vehicle: 'Van 21',
    kind: 'before',
    troubleCodes: ['P0420'],
    readings: [],
  },
  {
    name: 'road-drive',
    file: 'road-drive.csv',
    title: 'Van 9, forty minutes on the road',
    words: 'Invented: a drive from the cold start through town and motorway back to the bay; ten rows a second.',
    vehicle: 'Van 9',
    kind: 'other',
    troubleCodes: [],
    readings: [],
  },
  {
    name: 'analogue-hold',
    file: 'analogue-hold.csv',
    title: 'Van 17, analogue recording',
    words: 'Invented: two minutes from the sensor wires of an old van at 1000 rows a second, with no data list.',
    vehicle: 'Van 17',
    kind: 'other',
    troubleCodes: [],
    readings: [],
  },
];

function reading(inletC: number, outletC: number): SampleReading {
  return {
    bank: 1,
    brick: 1,
    inlet: { value: inletC, unit: 'C' },
    outlet: { value: outletC, unit: 'C' },
    rpm: 2250,
    emissivity: 0.85,
  };
}

// What a channel is for. Everything that scores asks for channels by role, never by the name a file gave them.

/** Every role a channel can play, in the order in which people see them. */
export const ROLES = [
  'upstreamO2',
  'upstreamLambda',
  'downstreamO2',
  'rpm',
  'coolant',
  'stft',
  'ltft',
  'maf',
  'load',
  'speed',
  'throttle',
  'fuelStatus',
  'catalystTemp',
  'intakeAir',
  'other',
] as const;

export type Role = (typeof ROLES)[number];

/** Bank of cylinders: 1, 2, or null where the channel belongs to the whole engine. */
export type Bank = 1 | 2 | null;

/** What is true of every channel that plays a role. */
export interface RoleFacts {
  readonly role: Role;
  /** In words, for labels: "Upstream oxygen sensor". */
  readonly words: string;
  /** The unit in which core keeps it; '1' is a pure number. */
  readonly unit: string;
  /** Whether the trade tells banks apart for it. */
  readonly perBank: boolean;
  /** Lowest and highest value that such a channel can carry; outside it the role is questioned, never refused. */
  readonly plausible: readonly [number, number];
  /** Digits after the decimal sign that an instrument of the trade resolves. */
  readonly digits: number;
  /** A fixed vertical scale the trade reads it on, or null for automatic. */
  readonly scale: readonly [number, number] | null;
}

/**
 * Facts of each role. Units are those of the headless command's contract. Plausible ranges are the ranges of the
 * J1979 data items where there is one (checks 1.04 to 1.18), widened for analogue recorders.
 */
export const ROLE_FACTS: Readonly<Record<Role, RoleFacts>> = {
  upstreamO2: facts('upstreamO2', 'Upstream oxygen sensor', 'V', true, [-0.5, 1.6], 3, [0, 1]),
  upstreamLambda: facts('upstreamLambda', 'Upstream lambda', '1', true, [0, 2.1], 3, null),
  downstreamO2: facts('downstreamO2', 'Downstream oxygen sensor', 'V', true, [-0.5, 1.6], 3, [0, 1]),
  rpm: facts('rpm', 'Engine speed', '1/min', false, [0, 16384], 0, null),
  coolant: facts('coolant', 'Coolant temperature', '°C', false, [-60, 215], 0, null),
  stft: facts('stft', 'Short-term fuel trim', '%', true, [-100, 100], 1, null),
  ltft: facts('ltft', 'Long-term fuel trim', '%', true, [-100, 100], 1, null),
  maf: facts('maf', 'Mass air flow', 'g/s', false, [0, 656], 2, null),
  load: facts('load', 'Calculated load', '%', false, [0, 400], 1, null),
  speed: facts('speed', 'Vehicle speed', 'km/h', false, [0, 350], 0, null),
  throttle: facts('throttle', 'Throttle position', '%', false, [-5, 105], 1, null),
  fuelStatus: facts('fuelStatus', 'Fuel system status', '1', true, [0, 255], 0, null),
  catalystTemp: facts('catalystTemp', 'Converter temperature', '°C', true, [-60, 1400], 0, null),
  intakeAir: facts('intakeAir', 'Intake air temperature', '°C', false, [-60, 215], 0, null),
  other: facts('other', 'Other channel', '1', false, [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY], 3, null),
};

function facts(
  role: Role,
  words: string,
  unit: string,
  perBank: boolean,
  plausible: readonly [number, number],
  digits: number,
  scale: readonly [number, number] | null,
): RoleFacts {
  return { role, words, unit, perBank, plausible, digits, scale };
}

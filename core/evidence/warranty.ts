// A reminder that an emission warranty may still pay for the part. Never a legal opinion: 42 USC 7541 (Clean Air Act, 207)
// as of its 1990 amendment, and the older term named in the EPA policy of 5 August 1986 (51 FR 28113). Checks 2.09, 2.11.

import type { Identity } from '../record/schema.ts';

/** Whether the part is still under the federal emission warranty for major parts; 'unknown' means it may still be. */
export type WarrantyState = 'inside' | 'outside' | 'unknown';

export interface Warranty {
  readonly state: WarrantyState;
  /** For people, in plain words, with what was known. */
  readonly words: string;
}

interface Term {
  readonly years: number;
  readonly miles: number;
}

/** The converter is one of the specified major parts: model year 1995 and later. */
const SINCE_1995: Term = { years: 8, miles: 80_000 };
const BEFORE_1995: Term = { years: 5, miles: 50_000 };
/** International mile, exact. */
const KM_A_MILE = 1.609344;
const ZERO = { value: 0, unit: 'mi' } as const;

type Known = Pick<Identity, 'modelYear' | 'mileage' | 'firstSold'>;

/**
 * Reads the warranty on `today` (a date, "2024-03-01"). Inside until the term's last day and mile, both included. Where
 * the date of first sale is not recorded it is never called outside; where the mileage is not, only after the last day.
 */
export function warrantyReminder(vehicle: Known, today: string): Warranty {
  const terms = termsOf(vehicle.modelYear);
  const states = terms.map((term) => stateUnder(term, vehicle, today));
  const [state = 'unknown'] = states;
  return states.every((one) => one === state)
    ? { state, words: sentence(state, terms, vehicle) }
    : { state: 'unknown', words: sentence('unknown', terms, vehicle) };
}

/** Both terms where the model year is not recorded. */
function termsOf(modelYear: number | null): Term[] {
  if (modelYear === null) return [SINCE_1995, BEFORE_1995];
  return [modelYear >= 1995 ? SINCE_1995 : BEFORE_1995];
}

function stateUnder({ years, miles }: Term, { mileage, firstSold }: Known, today: string): WarrantyState {
  if (firstSold === null) return 'unknown';
  if (today > lastDay(firstSold, years)) return 'outside';
  if (mileage === null) return 'unknown';
  return milesOf(mileage) > miles ? 'outside' : 'inside';
}

/** The same day so many years later; 29 February becomes 28 February where there is none. */
export function lastDay(firstSold: string, years: number): string {
  const year = Number(firstSold.slice(0, 4)) + years;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const rest = firstSold.slice(4);
  return `${String(year).padStart(4, '0')}${rest === '-02-29' && !leap ? '-02-28' : rest}`;
}

function milesOf({ value, unit }: NonNullable<Known['mileage']>): number {
  return unit === 'mi' ? value : value / KM_A_MILE;
}

function sentence(state: WarrantyState, terms: readonly Term[], vehicle: Known): string {
  const [term = SINCE_1995] = terms;
  const until = vehicle.firstSold === null ? null : lastDay(vehicle.firstSold, term.years);
  const limits = `${term.years} years or ${term.miles / 1000}\u00a0000 miles after the first sale, whichever comes first`;
  if (state === 'inside') {
    return `By date and mileage the United States emission warranty on this part still runs, until ${until} or ${term.miles / 1000}\u00a0000 miles, whichever comes first. Ask the maker's dealer before anybody pays.`;
  }
  if (state === 'outside') {
    return `By ${vehicle.mileage === null ? 'date' : 'date and mileage'} the United States emission warranty on this part (${limits}) has ended. A longer one of a state or of the maker may still run.`;
  }
  const missing = [
    vehicle.firstSold === null ? 'the date of first sale' : null,
    vehicle.mileage === null ? 'the mileage' : null,
    vehicle.modelYear === null ? 'the model year' : null,
  ].filter((part) => part !== null);
  const over = vehicle.mileage !== null && terms.every(({ miles }) => milesOf(vehicle.mileage ?? ZERO) > miles);
  const beyond = over ? ' The mileage recorded here is above that, but a longer warranty may run.' : '';
  return `This part may still be covered: the United States emission warranty runs ${limits}, and ${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} not recorded here.${beyond} Ask before anybody pays.`;
}

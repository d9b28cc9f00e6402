import type { Temperature } from '../../core/record/schema.ts';
import { celsius } from '../../core/thermal/pairOf.ts';

/** Nothing is colder; and a reading above this is a slip of the finger, for steel melts below it. */
const COLDEST_C = -273.15;
const HOTTEST_C = 1500;

/** A temperature as people type it: "290F", "143.3 °C", "416,5k". Null where it is none, has no unit, or cannot be. */
export function parseTemperature(typed: string): Temperature | null {
  const [, number, letter] = /^\s*([+-]?\d+(?:[.,]\d+)?)\s*°?\s*([CFK])\s*$/i.exec(typed) ?? [];
  const unit = UNITS.find((one) => one === letter?.toUpperCase());
  if (number === undefined || unit === undefined) return null;
  const temperature = { value: Number(number.replace(',', '.')), unit };
  const inC = celsius(temperature);
  return inC >= COLDEST_C && inC <= HOTTEST_C ? temperature : null;
}

const UNITS = ['C', 'F', 'K'] as const;

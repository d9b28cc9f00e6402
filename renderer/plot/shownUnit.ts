import { type Conversion, conversion } from '../../core/units/convert.ts';
import type { DisplayUnits } from './traceStackProps.ts';

/** A unit as a person reads it, beside the one that is kept. */
export interface ShownUnit {
  readonly unit: string;
  readonly toShown: Conversion;
  readonly toKept: Conversion;
}

const SAME: Conversion = (value) => value;
const TEMPERATURES = { C: '°C', F: '°F', K: 'K' } as const;

/** How values kept in `unit` are shown. Only temperature and road speed have a choice; all else stays as it is. */
export function shownUnit(unit: string, units: DisplayUnits | undefined): ShownUnit {
  const wanted =
    unit === '°C' ? TEMPERATURES[units?.temperature ?? 'C'] : unit === 'km/h' ? (units?.speed ?? unit) : unit;
  const toShown = wanted === unit ? SAME : conversion(unit, wanted);
  const toKept = wanted === unit ? SAME : conversion(wanted, unit);
  if (toShown === null || toKept === null) return { unit, toShown: SAME, toKept: SAME };
  return { unit: wanted, toShown, toKept };
}

// What the columns of a file say about each other: units that are named once, analysers, how sensors are numbered.

import { findUnit } from '../../units/findUnit.ts';
import { bankSensorIn } from './bankSensor.ts';
import { type Behaviour, looksLikeMillivolts, mayBeCounts } from './behaviour.ts';
import { type Concept, conceptsIn, plainWords } from './concepts.ts';
import type { NamedColumn } from './roleGuess.ts';

/** Habits of a file that settle what one column does not say. */
export interface FileHabits {
  /** It speaks in Fahrenheit and miles where it names units at all. */
  readonly imperial: boolean;
  /** Some oxygen sensor is given in millivolts, so those without a unit are too. */
  readonly millivolts: boolean;
  /** It holds concentrations of exhaust gas: a bare O2 is one of them. */
  readonly gases: boolean;
  /** "Lambdasonde 1 nach Kat": a lone number counts banks, as the word says where along the exhaust the sensor stands. */
  readonly numbersAreBanks: boolean;
  /** How trims without a unit are written where it is not in per cent. */
  readonly trimUnit: 'factors about 1' | 'parts of 1' | null;
}

/** Habits of a file whose columns have these values. `behaviours` is parallel to `columns`. */
export function fileHabits(columns: readonly NamedColumn[], behaviours: readonly Behaviour[]): FileHabits {
  const known = columns.map((column, i) => {
    const plain = plainWords(column.name);
    return { column, plain, ideas: conceptsIn(plain), b: behaviours[i] ?? null };
  });
  const bare = known.filter(({ column }) => isBare(column.unit));
  const hot = bare.some(({ ideas, b }) => isCoolant(ideas) && b !== null && isHot(b));
  const trims = bare.filter(({ ideas }) => ideas.has('shortTrim') || (ideas.has('short') && ideas.has('trim')));
  return {
    imperial: hot || columns.some(({ unit }) => isImperial(unit)),
    millivolts: known.some(
      ({ column, ideas, b }) =>
        ideas.has('oxygenSensor') &&
        (symbolOf(column.unit) === 'mV' ||
          (isBare(column.unit) && b !== null && looksLikeMillivolts(b) && !mayBeCounts(b))),
    ),
    gases: known.filter(({ plain }) => /^(?:co|co2|hc|thc|nox|no|ch4)(?: |$)/.test(plain)).length > 1,
    numbersAreBanks: known.some(({ column, ideas }) => countsBanks(column.name, ideas)),
    trimUnit: trimUnitOf(trims.flatMap(({ b }) => (b === null ? [] : [b]))),
  };
}

function isBare(unit: string | null): boolean {
  const row = unit === null ? null : findUnit(unit);
  return row === null || row.quantity === 'count';
}

function symbolOf(unit: string | null): string | null {
  return unit === null ? null : (findUnit(unit)?.symbol ?? null);
}

function isImperial(unit: string | null): boolean {
  const symbol = symbolOf(unit);
  return symbol === '°F' || symbol === 'mph' || symbol === 'lb/min' || symbol === 'psi';
}

function isCoolant(ideas: ReadonlySet<Concept>): boolean {
  return ideas.has('coolant') && !NO_COOLANT.some((idea) => ideas.has(idea));
}

const NO_COOLANT: readonly Concept[] = ['otherMedium', 'pressure', 'commanded', 'engineSpeed', 'sensorHelper'];

/** No coolant is so hot in °C, and none so cold in kelvin (common practice, no source). */
function isHot({ max, median }: Behaviour): boolean {
  return max > 135 && max < 290 && median < 290;
}

function countsBanks(name: string, ideas: ReadonlySet<Concept>): boolean {
  if (!ideas.has('oxygenSensor') && !ideas.has('lambda')) return false;
  const { bank, sensor } = bankSensorIn(name.toLowerCase(), 'sensor');
  return bank === null && ((sensor === 1 && ideas.has('rear')) || (sensor === 2 && ideas.has('front')));
}

/**
 * A trim in per cent swings around 0 in steps of some tenths: values that keep near one are factors, and many values that
 * all lie within a third of a per cent are parts of one (common practice, no source).
 */
function trimUnitOf(shortTrims: readonly Behaviour[]): FileHabits['trimUnit'] {
  if (shortTrims.some(({ distinct, min, max }) => distinct > 3 && min > 0.6 && max < 1.4)) return 'factors about 1';
  if (shortTrims.some(({ distinct, min, max }) => distinct > 5 && min >= -0.35 && max <= 0.35)) return 'parts of 1';
  return null;
}

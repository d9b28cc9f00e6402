import type { Bank, Role } from '../../capture/roles.ts';
import { convert } from '../../units/convert.ts';
import { findUnit } from '../../units/findUnit.ts';
import type { UnitRow } from '../../units/unitTable.ts';
import { bankSensorIn } from './bankSensor.ts';
import {
  type Behaviour,
  looksLikeAirFuelRatio,
  looksLikeLambda,
  looksLikeMillivolts,
  looksLikeSensorVolts,
  mayBeCounts,
} from './behaviour.ts';
import type { Concept } from './concepts.ts';
import type { FileHabits } from './fileHabits.ts';
import { type NamedColumn, otherGuess, type RoleGuess } from './roleGuess.ts';

const NEVER: readonly Concept[] = [
  ...([
    'commanded',
    'shortTrim',
    'longTrim',
    'short',
    'long',
    'trim',
    'coolant',
    'intakeAir',
    'airFlow',
    'throttle',
    'pedal',
  ] as const),
  ...([
    'pressure',
    'engineSpeed',
    'speed',
    'load',
    'sensorHelper',
    'temperature',
    'otherMedium',
    'fuelStatus',
  ] as const),
];

/** No zirconia cell gives so much; wideband electronics report some volts. Common practice, no source. */
const WIDEBAND_VOLTS = 1.7;

/**
 * Takes a column for an oxygen sensor by its name, its unit and its values, or null where nothing speaks for it. The
 * unit and the values decide between a voltage and an air ratio: "lambda" stands for both in the trade.
 */
export function oxygenRole(
  column: NamedColumn,
  ideas: ReadonlySet<Concept>,
  b: Behaviour,
  habits: FileHabits,
): RoleGuess | null {
  const lower = column.name.toLowerCase();
  const place = placeOf(lower, ideas, habits);
  const named = ideas.has('oxygenSensor') || ideas.has('lambda') || ideas.has('fuelToAir');
  const coded = place.sensor !== null && (place.bank !== null || ideas.has('voltage')) && /[bs]/.test(lower);
  const placed = ideas.has('front') || ideas.has('rear');
  const unit = column.unit === null ? null : findUnit(column.unit);
  const volts = unit?.quantity === 'voltage' || ideas.has('voltage');
  if (!named && !coded && !(placed && (volts || ideas.has('catalyst')))) return null;
  if (NEVER.some((idea) => ideas.has(idea)))
    return named ? otherGuess(column.unit, 'name says it is not the sensor’s signal') : null;
  if (habits.gases && unit === null && /^(?:o2|oxygen|sauerstoff|oxygene|oxigeno)$/.test(lower))
    return otherGuess(null, 'one of the gases that are measured');
  if (/(?:^|[\s_])min(?:$|[\s_])/.test(lower)) return otherGuess(column.unit, 'the lowest value of a stretch');
  if (unit?.quantity === 'current' || (unit === null && ideas.has('current'))) {
    return otherGuess(column.unit, 'the pumping current of a wideband sensor');
  }
  if (volts && ideas.has('lambda') && b.finite > 0 && mediansVolts(unit, b) > WIDEBAND_VOLTS) {
    return otherGuess(column.unit, 'the voltage of a wideband sensor, which says nothing without its curve');
  }
  const kind = kindOf(column, ideas, b, habits);
  if (kind === null)
    return named
      ? otherGuess(
          column.unit,
          `name says oxygen sensor, ${rangeWords(b)} fit neither a voltage nor an air ratio`,
          false,
        )
      : null;
  // Air ratios stand before the converter: the second of two is the other bank's.
  const otherBank = kind.lambda && place.bank === null && place.sensor === 2 && !ideas.has('rear');
  const sensor = otherBank ? 1 : (place.sensor ?? (ideas.has('front') ? 1 : ideas.has('rear') ? 2 : null));
  const side = place.bank === null ? sideOf(lower) : null;
  const clash = place.counted || (place.sensor === 1 ? ideas.has('rear') : place.sensor !== null && ideas.has('front'));
  const role: Role = kind.lambda ? 'upstreamLambda' : sensor !== null && sensor > 1 ? 'downstreamO2' : 'upstreamO2';
  if (kind.lambda && sensor !== null && sensor > 1) return otherGuess(column.unit, 'an air ratio behind the converter');
  return {
    role,
    bank: otherBank ? 2 : (place.bank ?? side ?? 1),
    sensor,
    unit: kind.unit,
    unitGuessed: column.unit === null && kind.guessed,
    score:
      1 -
      (ideas.has('second') ? 0.2 : 0) -
      (CYLINDERS.test(lower) ? 0.3 : 0) +
      (place.bank !== null ? 0.1 : 0) +
      (sensor !== null ? 0.1 : 0) +
      (unit === null ? 0 : 0.1),
    certain:
      sensor !== null && !clash && kind.doubtful !== true && !otherBank && side === null && (named || !kind.guessed),
    because: `name says ${kind.lambda ? 'air ratio' : 'oxygen sensor'}${sensor === null ? ' but not which' : side === null ? '' : ' but not which bank'}, ${rangeWords(b)}`,
  };
}

/** Cylinders have numbers too: "AFR cyl 2", "O2 cyl 1-3 pre". */
const CYLINDERS = /(?:cyl|cylinders?|zyl|zylinder|cylindres?|cilindros?)[\s_.#]*\d(?:\s?[-–+,]\s?\d)*/;

/** Bank and sensor of a name; a lone number is the bank's where the file counts banks so. */
function placeOf(lower: string, ideas: ReadonlySet<Concept>, { numbersAreBanks }: FileHabits): Place {
  const { bank, sensor } = bankSensorIn(lower.replace(CYLINDERS, ' '), 'sensor');
  const placed = ideas.has('front') !== ideas.has('rear');
  if (!numbersAreBanks || bank !== null || !placed || (sensor !== 1 && sensor !== 2))
    return { bank, sensor, counted: false };
  return { bank: sensor, sensor: ideas.has('rear') ? 2 : 1, counted: true };
}

interface Place {
  readonly bank: Bank;
  readonly sensor: number | null;
  readonly counted: boolean;
}

/** Median in volts; without a unit, in millivolts where the values look like those. */
function mediansVolts(unit: UnitRow | null, b: Behaviour): number {
  if (unit !== null) return convert(b.median, unit.symbol, 'V') ?? b.median;
  return looksLikeMillivolts(b) ? b.median / 1000 : b.median;
}

const LEFT = /(?<![a-z])(?:left|links|linke[rn]?|gauche|izquierd[ao]|bank[\s_-]?a)(?![a-z])/;
const RIGHT = /(?<![a-z])(?:right|rechts|rechte[rn]?|droite?|derech[ao]|bank[\s_-]?b)(?![a-z])/;

/** A bank by its side or letter, to be asked about: which side is bank 1 differs from engine to engine. */
function sideOf(lower: string): 1 | 2 | null {
  return LEFT.test(lower) ? 1 : RIGHT.test(lower) ? 2 : null;
}

interface SignalKind {
  readonly lambda: boolean;
  readonly unit: string;
  readonly guessed: boolean;
  /** The values may as well be something else, and a person should look. */
  readonly doubtful?: boolean;
}

/** Voltage or air ratio, and in which unit; null where unit and values allow neither. */
function kindOf(column: NamedColumn, ideas: ReadonlySet<Concept>, b: Behaviour, habits: FileHabits): SignalKind | null {
  const unit = column.unit === null ? null : findUnit(column.unit);
  if (unit?.quantity === 'voltage') return { lambda: false, unit: column.unit ?? 'V', guessed: false };
  if (unit?.quantity === 'airRatio') return lambdaUnit(column, ideas, b);
  if (unit !== null && unit.quantity !== 'count') return null;
  if (ideas.has('current')) return null;
  if (ideas.has('fuelToAir') && looksLikeLambda(b)) return { lambda: true, unit: 'φ', guessed: true };
  if (habits.millivolts && !ideas.has('lambda') && (b.max > WIDEBAND_VOLTS ? looksLowInMillivolts(b) : b.distinct < 4))
    return { lambda: false, unit: 'mV', guessed: true };
  if (ideas.has('voltage') || !ideas.has('lambda')) {
    if (looksLikeSensorVolts(b)) return { lambda: false, unit: 'V', guessed: false };
    if (looksLikeMillivolts(b)) return { lambda: false, unit: 'mV', guessed: true, doubtful: mayBeCounts(b) };
    if (ideas.has('voltage')) return { lambda: false, unit: 'V', guessed: true };
  }
  if (looksLikeLambda(b)) return { lambda: true, unit: 'λ', guessed: false };
  if (looksLikeAirFuelRatio(b)) return { lambda: true, unit: 'AFR', guessed: true };
  if (looksLikeSensorVolts(b)) return { lambda: false, unit: 'V', guessed: true };
  // 970 to 1030 are no millivolts of a sensor that swings, but thousandths.
  if (looksLikeMillivolts(b) && !(b.min > 600 && !ideas.has('oxygenSensor')))
    return { lambda: false, unit: 'mV', guessed: true };
  return b.finite === 0 ? { lambda: ideas.has('lambda'), unit: ideas.has('lambda') ? 'λ' : 'V', guessed: true } : null;
}

/** A sensor at rest in a file of millivolts. */
function looksLowInMillivolts({ finite, min, max }: Behaviour): boolean {
  return finite > 0 && min >= -600 && max <= 1700;
}

/** A unit of lambda beside values of an air-fuel ratio is taken for what the values are, and the other way round. */
function lambdaUnit(column: NamedColumn, ideas: ReadonlySet<Concept>, b: Behaviour): SignalKind {
  const given = column.unit ?? 'λ';
  const ratio = findUnit(given)?.symbol === 'AFR';
  if (b.finite === 0) return { lambda: true, unit: given, guessed: false };
  if (ratio && !looksLikeAirFuelRatio(b) && looksLikeLambda(b)) return { lambda: true, unit: 'λ', guessed: true };
  if (!ratio && looksLikeAirFuelRatio(b)) return { lambda: true, unit: 'AFR', guessed: true };
  if (ideas.has('voltage') && looksLikeSensorVolts(b)) return { lambda: false, unit: 'V', guessed: true };
  return { lambda: true, unit: given, guessed: false };
}

function rangeWords(b: Behaviour): string {
  if (b.finite === 0) return 'no values';
  return `values from ${Number(b.min.toPrecision(4))} to ${Number(b.max.toPrecision(4))}`;
}

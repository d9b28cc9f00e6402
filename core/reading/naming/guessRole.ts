import { ROLE_FACTS } from '../../capture/roles.ts';
import { findUnit } from '../../units/findUnit.ts';
import { bankSensorIn } from './bankSensor.ts';
import type { Behaviour } from './behaviour.ts';
import { type Concept, conceptsIn, plainWords } from './concepts.ts';
import type { FileHabits } from './fileHabits.ts';
import { isLoopSwitch } from './loopSwitch.ts';
import { oxygenRole } from './oxygenRole.ts';
import { type NamedColumn, otherGuess, type RoleGuess } from './roleGuess.ts';
import { ROLE_RULES, type RoleRule } from './roleRules.ts';
import { shortUnitAtEnd } from './splitNameAndUnit.ts';

/** What one column is for, by its name, its unit and its values. Never fails: the last resort is role 'other'. */
export function guessRole(column: NamedColumn, b: Behaviour, habits: FileHabits): RoleGuess {
  const short = column.unit === null ? shortUnitAtEnd(column.name) : null;
  if (short === null) return bestGuess(column, b, habits);
  const guess = bestGuess({ ...column, unit: short.unit }, b, habits);
  // "TPS A": a letter that is no unit of what the name measures is only a letter.
  return guess.role === 'other' ? bestGuess(column, b, habits) : guess;
}

function bestGuess(withUnit: NamedColumn, b: Behaviour, habits: FileHabits): RoleGuess {
  const ideas = ideasOf(withUnit);
  const oxygen = oxygenRole(withUnit, ideas, b, habits);
  if (oxygen !== null && oxygen.role !== 'other') return oxygen;
  let best: RoleGuess | null = null;
  for (const rule of ROLE_RULES) {
    const guess = fits(rule, ideas) ? byRule(rule, withUnit, ideas, b, habits) : null;
    if (guess !== null && (best === null || guess.score > best.score)) best = guess;
  }
  return best ?? oxygen ?? otherGuess(withUnit.unit, 'name says nothing that is scored');
}

/** SAE J1979, PIDs 14 to 1B, second byte: FF, which scales to 99.2 %, says that the sensor takes no part in the trim (check 1.13). */
const UNUSED_TRIM = 99;

/** Which computer answered: "ECM.O2_B1S1" is the sensor's, not the computer's. */
const ANSWERED_BY = /^\s*(?:ecm|ecu\d?|pcm|dme)\s*[.:/|_]\s*/i;

/** A unit of rotation says engine speed where the name only says engine, and one of temperature what "T before cat" is. */
function ideasOf({ name, unit }: NamedColumn): ReadonlySet<Concept> {
  const ideas = conceptsIn(plainWords(name.replace(ANSWERED_BY, '')));
  const quantity = unit === null ? null : findUnit(unit)?.quantity;
  if (quantity === 'rotation') return new Set([...ideas, 'engineSpeed']);
  return quantity === 'temperature' ? new Set([...ideas, 'temperature']) : ideas;
}

function fits(rule: RoleRule, ideas: ReadonlySet<Concept>): boolean {
  return rule.all.every((group) => group.some((idea) => ideas.has(idea))) && !rule.none.some((idea) => ideas.has(idea));
}

function byRule(
  rule: RoleRule,
  column: NamedColumn,
  ideas: ReadonlySet<Concept>,
  b: Behaviour,
  habits: FileHabits,
): RoleGuess | null {
  const { words, perBank, unit: own } = ROLE_FACTS[rule.role];
  const unit = column.unit === null ? null : findUnit(column.unit);
  const known = unit !== null && unit.quantity !== 'count';
  if (known && !rule.quantities.includes(unit.quantity)) return null;
  const place = perBank
    ? bankSensorIn(column.name.toLowerCase(), rule.role === 'catalystTemp' ? 'none' : 'bank')
    : null;
  if (rule.role === 'fuelStatus' && isLoopSwitch(column.name, b))
    return otherGuess(
      column.unit,
      'name says fuel system, but its values are those of a switch, not the codes of the status',
      false,
    );
  const guessed = known ? null : guessUnit(rule, b, habits);
  // "[furlong]": a unit that is named but not known.
  const strange = column.unit !== null && unit === null;
  const worse = rule.worse.filter((idea) => ideas.has(idea)).length;
  // The trim that belongs to one sensor's data item is not the bank's own.
  const ofOne = (rule.role === 'stft' || rule.role === 'ltft') && place !== null && place.sensor !== null;
  if (ofOne && b.finite > 0 && b.min >= UNUSED_TRIM)
    return otherGuess(column.unit, 'the trim of a sensor that the fuel control does not use');
  return {
    role: rule.role,
    bank: perBank ? (place?.bank ?? 1) : null,
    sensor: place?.sensor ?? null,
    unit: known ? column.unit : (guessed ?? own),
    unitGuessed: !known && (guessed !== null || strange),
    score: 1 + (known ? 0.3 : 0) - worse * 0.2 - (ofOne ? 0.15 : 0) + rule.all.length * 0.01,
    // The air of one bank is about half of what the engine takes in.
    certain: rule.role !== 'maf' || bankSensorIn(column.name.toLowerCase()).bank === null,
    because: `name says ${words.toLowerCase()}${known ? `, unit ${column.unit ?? ''}` : ''}`,
  };
}

/** An engine that runs has several per cent of load and throttle, and not all its values below one (common practice, no source). */
function isFraction(b: Behaviour): boolean {
  return b.min >= 0 && b.max > 0.02 && b.max <= 1.01 && b.distinct > 5;
}

/** A trim that is written as others of its file are, unless its own values speak against that. */
function trimUnit({ min, max }: Behaviour, { trimUnit: unit }: FileHabits): string | null {
  const fits = unit === 'factors about 1' ? min > 0.5 && max < 1.5 : min > -0.6 && max < 0.6;
  return fits ? unit : null;
}

/**
 * A unit that the values give away where the file names none; null where the role's own is as good as any. Coolant of 290
 * °F would be steam, and is an engine of 17 °C in kelvin.
 */
function guessUnit(rule: RoleRule, b: Behaviour, habits: FileHabits): string | null {
  if (b.finite === 0) return null;
  if (rule.role === 'coolant' && b.median > 290) return 'K';
  if (rule.role === 'intakeAir' && b.median > 240) return 'K';
  if (rule.role === 'coolant') return b.max > 135 || (habits.imperial && b.median > 60) ? '°F' : null;
  if (rule.role === 'intakeAir') return habits.imperial ? '°F' : null;
  if (rule.role === 'catalystTemp') return habits.imperial || b.max > 1100 ? '°F' : null;
  if (rule.role === 'speed') return habits.imperial ? 'mph' : null;
  if (rule.role === 'stft' || rule.role === 'ltft') return trimUnit(b, habits);
  if (rule.role === 'load' || rule.role === 'throttle') return isFraction(b) ? 'parts of 1' : null;
  return null;
}

// Decides how the rows are arranged (one row a moment, one row a value, a time for every channel) and where the times
// come from.

import { findUnit } from '../../units/findUnit.ts';
import { type Concept, conceptsIn, plainWords } from '../naming/concepts.ts';
import { compactClock, isCompactClock } from '../time/compactClock.ts';
import { countsDays, numberTimeOf } from '../time/numberTime.ts';
import type { TimePlan } from '../time/timePlan.ts';
import { rateInPreamble } from './rateInPreamble.ts';
import type { TextColumn, TextHead } from './textPlan.ts';

/** Rate that is assumed where neither the file nor the person gives one, 1/s; the person is asked. */
export const ASSUMED_RATE_HZ = 10;

/** What a person decided about the times. */
export interface TimeChoice {
  readonly timeColumn: number | null;
  readonly rateHz: number | null;
}

/** Where the times of a file of one row a moment come from. */
export function findTime(head: TextHead, choice: TimeChoice | null): TimePlan {
  if (choice?.rateHz != null && choice.timeColumn === null) {
    return { kind: 'rate', rateHz: choice.rateHz, from: 'person', words: `${choice.rateHz} rows a second` };
  }
  const chosen = choice?.timeColumn == null ? undefined : head.columns[choice.timeColumn];
  const column = chosen ?? bestTimeColumn(head.columns);
  if (column !== null) return planOf(column, head.columns, chosen !== undefined);
  const rate = rateInPreamble(head.preamble);
  const rising = rate === null ? risingFirstColumn(head.columns) : null;
  if (rising !== null) return planOf(rising, head.columns, false);
  if (rate !== null) return { kind: 'rate', rateHz: rate, from: 'file', words: `${rate} rows a second` };
  return { kind: 'rate', rateHz: ASSUMED_RATE_HZ, from: 'assumed', words: 'no times' };
}

/** The plan for reading one column as times. */
export function planOf(column: TextColumn, columns: readonly TextColumn[], chosen: boolean): TimePlan {
  const { timeForm, numbers } = column.sample;
  if (timeForm === null && isCompactClock(column.heading, column.sample.cells)) {
    return { kind: 'text', column: column.index, form: compactClock, fraction: null, words: compactClock.words };
  }
  if (timeForm === null) {
    const number = numberTimeOf(column.name, column.unit, numbers);
    const unnamed = !chosen && !isNamedTime(column) && !number.epoch;
    return {
      kind: 'number',
      column: column.index,
      ...number,
      guess: number.guess ?? (unnamed ? 'no column is plainly the time' : null),
    };
  }
  const clock = timeForm.kind === 'date' ? columns.find((other) => other.sample.timeForm?.kind === 'clock') : undefined;
  if (clock !== undefined) return planOf(clock, columns, chosen);
  if (timeForm.kind === 'clock') {
    const date = columns.find((other) => other.index !== column.index && other.sample.timeForm?.kind === 'date');
    if (date?.sample.timeForm != null) {
      const dateForm = date.sample.timeForm;
      return {
        kind: 'dateAndClock',
        column: column.index,
        dateColumn: date.index,
        form: timeForm,
        dateForm,
        words: 'date and time in two columns',
      };
    }
  }
  const fraction = millisecondsBeside(column, columns);
  const words = fraction === null ? timeForm.words : `${timeForm.words} with milliseconds in a column of their own`;
  return { kind: 'text', column: column.index, form: timeForm, fraction, words };
}

/** A column of milliseconds, 0 to 999, beside times of whole seconds; its index, or null. */
function millisecondsBeside(time: TextColumn, columns: readonly TextColumn[]): number | null {
  if (time.sample.cells.some((cell) => /[.,]\d/.test(cell.slice(-7)))) return null;
  const found = columns.find(({ index, unit, heading, sample }) => {
    if (index === time.index || sample.numeric < 3 || rises(sample.numbers)) return false;
    const named = /(?:^| )(?:ms|msec|millis\w*|millisek\w*|milisegundos)(?: |$)/.test(plainWords(heading));
    const milli = named || (unit !== null && findUnit(unit)?.symbol === 'ms');
    return milli && sample.numbers.every((value) => Number.isNaN(value) || (value >= 0 && value < 1000));
  });
  return found?.index ?? null;
}

/** Columns that hold times, in the order of the file. */
export function timeColumns(columns: readonly TextColumn[]): TextColumn[] {
  return columns.filter(
    (column) => isTextTime(column) || (isNamedTime(column) && (isPlainlyTime(column) || rises(column.sample.numbers))),
  );
}

function bestTimeColumn(columns: readonly TextColumn[]): TextColumn | null {
  const all = timeColumns(columns);
  const straight = all.filter((column) => column.sample.timeForm !== null || rises(column.sample.numbers));
  const found = straight.length > 0 ? straight : all;
  // Of several, the one that tells the most rows apart; the first of equals.
  let best: TextColumn | null = null;
  for (const column of found) if (best === null || fineness(column) > fineness(best) * 1.2) best = column;
  return best ?? columns.find(countsSinceStart) ?? null;
}

/** Share of rows with a time of their own. */
function fineness({ sample }: TextColumn): number {
  return new Set(sample.cells).size / Math.max(1, sample.cells.length);
}

function isTextTime({ sample }: TextColumn): boolean {
  return sample.timeForm !== null && sample.timeForm.kind !== 'date';
}

/** Whether the heading or the unit says time, and nothing else that is measured. */
export function isNamedTime(column: TextColumn): boolean {
  const quantity = column.unit === null ? null : (findUnit(column.unit)?.quantity ?? null);
  if (quantity !== null && quantity !== 'time' && quantity !== 'count') return false;
  const ideas = conceptsIn(plainWords(column.heading));
  if (NOT_TIMES.some((idea) => ideas.has(idea))) return false;
  return ideas.has('time') || quantity === 'time' || (ideas.has('date') && countsDays(column.sample.numbers));
}

/** What measures something else: the T of T_coolant is no time, though it rises while the engine warms up. */
const NOT_TIMES: readonly Concept[] = ['notTime', 'oxygenSensor', 'coolant', 'intakeAir', 'temperature', 'catalyst'];

/** "Time", "Zeit (s)": nothing else in the name, so rows may even be in no order. */
function isPlainlyTime({ heading, name, sample }: TextColumn): boolean {
  const words = plainWords(name)
    .split(' ')
    .filter((word) => !conceptsIn(word).has('time'));
  return words.length === 0 && plainWords(heading) !== '' && new Set(sample.numbers).size > 1;
}

/** Time since the engine was started: whole seconds, but better than none. */
function countsSinceStart({ heading, unit, sample }: TextColumn): boolean {
  const timed = conceptsIn(plainWords(heading)).has('time') || (unit !== null && findUnit(unit)?.quantity === 'time');
  return timed && sample.numbers.length > 3 && rises(sample.numbers);
}

/** A first column that only rises, and by steps of one kind, without a name that says otherwise. */
function risingFirstColumn(columns: readonly TextColumn[]): TextColumn | null {
  const first = columns[0];
  if (first === undefined || columns.length < 2 || (first.unit !== null && findUnit(first.unit)?.quantity !== 'time'))
    return null;
  const { numbers } = first.sample;
  const plain = plainWords(first.heading);
  if (conceptsIn(plain).size > 0 && !conceptsIn(plain).has('time')) return null;
  if (/^(?:ch|chan|channel|kanal|canal|voie|ain?|an|input|eingang|probe) ?[a-h0-9]{1,2}$/.test(plain)) return null;
  // A bare count of rows says nothing about time; with fractions it is none, whatever letters its name begins with.
  if (
    numbers.every(Number.isInteger) &&
    /(?:^| )(?:index|idx|no|nr|nummer|number|sample|samples|row|zeile|count|n|num|record|id|ligne|fila|muestra)(?: |$)/.test(
      plain,
    )
  )
    return null;
  const steps = numbers.slice(1).map((value, i) => value - (numbers[i] ?? 0));
  if (steps.length < 3 || steps.some((step) => !(step > 0))) return null;
  const wholeSteps = steps.every((step) => step === 1);
  const sorted = [...steps].sort((a, b) => a - b);
  const median = sorted[sorted.length >> 1] ?? 0;
  return !wholeSteps && (sorted[sorted.length - 1] ?? 0) < median * 50 ? first : null;
}

/** Rises for the most part: rows may be out of order, and recordings may start again. */
export function rises(numbers: readonly number[]): boolean {
  const finite = numbers.filter((value) => !Number.isNaN(value));
  if (finite.length < 2) return finite.length === 1;
  let up = 0;
  let down = 0;
  for (let i = 1; i < finite.length; i++) {
    const step = (finite[i] ?? 0) - (finite[i - 1] ?? 0);
    if (step > 0) up++;
    else if (step < 0) down++;
  }
  // A count that starts again and again, as milliseconds beside a clock do, says nothing by itself.
  if (Math.min(up, down) > 0 && new Set(finite).size < finite.length * 0.6) return false;
  return up > down * 4 || down > up * 4;
}

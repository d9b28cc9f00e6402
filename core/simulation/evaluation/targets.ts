import type { CaseRow } from './caseRow.ts';
import { brierScore, calibrationError, type Forecast, rocArea, shareOf } from './rates.ts';

/** A promise about the scoring core, and how it is worked out from scored cases. */
export interface Target {
  readonly words: string;
  /** What is promised: at least or at most a figure, or a range. */
  readonly promised: readonly [number, number];
  /** 'share' is shown in per cent. */
  readonly as: 'share' | 'number';
  readonly cases: (row: CaseRow) => boolean;
  readonly figure: (rows: readonly CaseRow[]) => number;
}

const clean = ({ fault }: CaseRow) => fault === null;
const misled = ({ fault }: CaseRow) => fault !== null;
const good = ({ kind }: CaseRow) => kind === 'fresh' || kind === 'aged';
const failed = ({ kind }: CaseRow) => kind === 'failed';
const decided = (row: CaseRow) => good(row) || failed(row);
const quick = ({ sensorHz }: CaseRow) => sensorHz >= 8;
const slow = ({ sensorHz }: CaseRow) => sensorHz >= 1 && sensorHz <= 5;

const atLeast = (low: number): readonly [number, number] => [low, Number.POSITIVE_INFINITY];
const atMost = (high: number): readonly [number, number] => [Number.NEGATIVE_INFINITY, high];

/** Every target, in the order of the table. 'Quick' instruments see each sensor 8 times a second or more. */
export const TARGETS: readonly Target[] = [
  {
    words: 'ROC area, failed against sound, no misleading fault, 8 values a second or more',
    promised: atLeast(0.995),
    as: 'number',
    cases: (row) => clean(row) && decided(row) && quick(row),
    figure: area,
  },
  {
    words: 'ROC area, the same, 1 to 5 values a second',
    promised: atLeast(0.97),
    as: 'number',
    cases: (row) => clean(row) && decided(row) && slow(row),
    figure: area,
  },
  {
    words: 'Sound converter called notStoring, no misleading fault',
    promised: atMost(0.005),
    as: 'share',
    cases: (row) => clean(row) && good(row),
    figure: (rows) => shareOf(rows, ({ finding }) => finding === 'notStoring'),
  },
  {
    words: 'Sound converter called notStoring, over all misleading faults',
    promised: atMost(0.02),
    as: 'share',
    cases: (row) => misled(row) && good(row),
    figure: (rows) => shareOf(rows, ({ finding }) => finding === 'notStoring'),
  },
  {
    words: 'Failed converter called storing, no misleading fault',
    promised: atMost(0.01),
    as: 'share',
    cases: (row) => clean(row) && failed(row),
    figure: (rows) => shareOf(rows, ({ finding }) => finding === 'storing'),
  },
  {
    words: 'Failed converter called storing, over all misleading faults',
    promised: atMost(0.01),
    as: 'share',
    cases: (row) => misled(row) && failed(row),
    figure: (rows) => shareOf(rows, ({ finding }) => finding === 'storing'),
  },
  {
    words: 'cannotTell, no misleading fault, 8 values a second or more, proper hold',
    promised: atMost(0.05),
    as: 'share',
    cases: (row) => clean(row) && quick(row) && row.properHold,
    figure: cannotTell,
  },
  {
    words: 'cannotTell, with a misleading fault',
    promised: atLeast(0.85),
    as: 'share',
    cases: misled,
    figure: cannotTell,
  },
  {
    words: 'The right blocker named, with a misleading fault',
    promised: atLeast(0.75),
    as: 'share',
    cases: misled,
    figure: (rows) => shareOf(rows, ({ named }) => named === true),
  },
  {
    words: 'Brier score, no misleading fault',
    promised: atMost(0.03),
    as: 'number',
    cases: (row) => clean(row) && decided(row) && row.probabilityNotStoring !== null,
    figure: (rows) => brierScore(forecasts(rows)),
  },
  {
    words: 'Expected calibration error, no misleading fault',
    promised: atMost(0.03),
    as: 'number',
    cases: (row) => clean(row) && decided(row) && row.probabilityNotStoring !== null,
    figure: (rows) => calibrationError(forecasts(rows)),
  },
  {
    words: 'Capacity in grams within a factor of 1.5, 8 values a second or more, air flow recorded, interval closed',
    promised: atLeast(0.8),
    as: 'share',
    cases: (row) => clean(row) && quick(row) && row.fit?.grams != null && closed(row),
    figure: (rows) => shareOf(rows, ({ fit, trueGrams }) => within(1.5, fit?.grams ?? 0, trueGrams)),
  },
  {
    words: 'Capacity for two litres within a factor of 1.5, 8 values a second or more, every fit',
    promised: atLeast(0.8),
    as: 'share',
    cases: (row) => clean(row) && quick(row) && row.fit !== null,
    figure: (rows) => shareOf(rows, ({ fit, trueFor2L }) => within(1.5, fit?.for2L ?? 0, trueFor2L)),
  },
  {
    words: '95 % interval of the capacity holds the truth, no misleading fault',
    promised: [0.9, 0.99],
    as: 'share',
    cases: (row) => clean(row) && row.fit !== null,
    figure: (rows) =>
      shareOf(
        rows,
        ({ fit, trueFor2L }) => (fit?.low ?? 0) <= trueFor2L && trueFor2L <= (fit?.high ?? Number.POSITIVE_INFINITY),
      ),
  },
];

function area(rows: readonly CaseRow[]): number {
  const scores = (from: readonly CaseRow[]) => from.map(({ probabilityNotStoring }) => probabilityNotStoring ?? 0.5);
  return rocArea(scores(rows.filter(failed)), scores(rows.filter(good)));
}

function cannotTell(rows: readonly CaseRow[]): number {
  return shareOf(rows, ({ finding }) => finding === 'cannotTell');
}

function forecasts(rows: readonly CaseRow[]): Forecast[] {
  return rows.map((row) => ({ probability: row.probabilityNotStoring ?? 0.5, happened: failed(row) }));
}

/** Whether the fit bounds the capacity on both sides; a rear trace that stays calm, or follows at once, leaves one open. */
function closed({ fit }: CaseRow): boolean {
  return fit !== null && fit.low !== null && fit.high !== null;
}

function within(factor: number, fitted: number, real: number): boolean {
  return Math.abs(Math.log(fitted / real)) <= Math.log(factor);
}

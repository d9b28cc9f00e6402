// The short report for people, as lines of plain text. Names come from strangers: what is not seen is written out, so
// that no file can steer the terminal (T-INJ-7).

import type { Capture } from '../../core/capture/capture.ts';
import { sampleCount } from '../../core/capture/timeBase.ts';
import type { ReadInput } from '../../core/contract/buildCommandReport.ts';
import { digitsFor, showNumber } from '../../core/evidence/words/numbers.ts';
import { durationWords, stretchWords } from '../../core/evidence/words/quantities.ts';
import { showControlsOnOneLine } from '../../core/evidence/words/showControls.ts';
import { sureBriefly } from '../../core/evidence/words/sure.ts';
import {
  bankWords,
  conditionWords,
  FINDING_WORDS,
  measureWords,
  roleWords,
  WINDOW_KIND_WORDS,
} from '../../core/evidence/words/terms.ts';
import type { CaptureScore, Verdict, WindowScore } from '../../core/findings/finding.ts';
import type { MeasureValue } from '../../core/measures/measure.ts';
import { warningRow } from '../../core/words/warningRow.ts';

/** The report is short: the first measures of a window are the ones people argue about; --json and --sheet have all. */
const MEASURES_SHOWN = 5;

/** What was read: one line for the file, one for each channel, one for each oddity. */
export function describeLines({ capture, sha256 }: ReadInput): string[] {
  const length = durationWords(capture.durationS, '.');
  return [
    capture.name,
    `  ${capture.layout.words}`,
    `  ${length}, ${grouped(capture.rows, 'row')}, SHA-256 ${sha256.slice(0, 12)}`,
    ...(capture.startClock === null ? [] : [`  Clock at its start: ${capture.startClock}`]),
    ...channelLines(capture),
    ...capture.warnings.map((warning) => `  Noted: ${[warning.detail, warningRow(warning)].join(' ').trim()}`),
  ].map(showControlsOnOneLine);
}

/** The whole short report: what was read, the verdict with what stands in its way, the windows, what to test next. */
export function peopleLines(read: ReadInput, score: CaptureScore): string[] {
  const banks = score.banks.length > 1 ? score.banks : [score.verdict];
  const never = neverRecorded(score.windows);
  return [
    ...describeLines(read),
    '',
    ...banks.flatMap(verdictLines),
    ...score.thermal.map(({ reading }) => `  Temperatures: ${reading}`),
    '',
    ...(score.windows.length === 0
      ? ['  No window was scored.']
      : score.windows.flatMap((window) => windowLines(window, never))),
    ...(never.length === 0 ? [] : ['', `  Not recorded in any window: ${never.map(conditionWords).join('; ')}.`]),
    ...nextLines(score.verdict),
  ].map(showControlsOnOneLine);
}

function channelLines({ channels }: Capture): string[] {
  return channels.map((channel) => {
    const rate = channel.facts.medianRateHz;
    const often = `${showNumber(rate, digitsFor(rate / 100, 2), '.')} Hz`;
    const what = roleWords(channel.role, channel.bank);
    return `  ${what}: "${channel.name}", ${grouped(sampleCount(channel.time), 'sample')}, ${often}`;
  });
}

function verdictLines(verdict: Verdict): string[] {
  return [
    `  ${verdict.sentence}`,
    ...verdict.blockers.map(({ words }) => `    Stands in the way: ${words}`),
    ...verdict.reasons.map(
      (reason) => `    ${signed(reason.weight)} for "${FINDING_WORDS[reason.for].toLowerCase()}": ${reason.detail}`,
    ),
  ];
}

function signed(weight: number): string {
  return showNumber(Math.abs(weight), 1, '.').padStart(4);
}

/** Ids of the conditions that no window had the channels or codes for: said once, not under each window. */
function neverRecorded(windows: readonly WindowScore[]): string[] {
  const asked = windows.flatMap(({ conditions }) => conditions);
  const known = new Set(asked.filter(({ met }) => met !== null).map(({ id }) => id));
  return [...new Set(asked.map(({ id }) => id))].filter((id) => !known.has(id));
}

function windowLines(score: WindowScore, never: readonly string[]): string[] {
  const sure = sureBriefly(score.finding, score.probabilityNotStoring, '.');
  const where = `${stretchWords(score.startS, score.endS, '.')}, ${WINDOW_KIND_WORDS[score.kind].toLowerCase()}, ${bankWords(score.bank)}`;
  return [
    `  ${where}: ${FINDING_WORDS[score.finding].toLowerCase()}${sure === null ? '' : `, ${sure}`}`,
    ...score.conditions
      .filter(({ id, met }) => met !== true && !never.includes(id))
      .map(
        ({ id, met, detail }) => `    ${conditionWords(id)} – ${met === null ? 'not recorded' : 'not met'}: ${detail}`,
      ),
    ...score.measures
      .filter(({ value }) => value !== null)
      .slice(0, MEASURES_SHOWN)
      .map(measureLine),
  ];
}

function measureLine({ id, value, interval }: MeasureValue): string {
  const { words, unit, digits: most } = measureWords(id);
  const digits = interval === null ? most : digitsFor((interval[1] - interval[0]) / 2, most);
  const shown = (one: number) => showNumber(one, digits, '.');
  const range = interval === null ? '' : ` (${shown(interval[0])} to ${shown(interval[1])})`;
  return `    ${words}: ${shown(value ?? 0)}${range}${unit === '1' ? '' : ` ${unit}`}`;
}

function nextLines({ nextTests: [next] }: Verdict): string[] {
  return next === undefined ? [] : ['', `  Next test: ${next.words} ${next.why} About ${next.minutes} min.`];
}

/** "120 000 rows", "1 row". */
function grouped(count: number, one: string): string {
  return `${showNumber(count, 0, '.')} ${count === 1 ? one : `${one}s`}`;
}

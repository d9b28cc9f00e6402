import type { WindowScore } from '../../findings/finding.ts';
import type { MeasureValue } from '../../measures/measure.ts';
import type { CaptureRef, KeptFinding, RecordWindow } from '../../record/schema.ts';
import type { Block, Cell, DecimalSign } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { digitsFor, digitsOf, numberCell } from '../words/numbers.ts';
import { instantWords } from '../words/quantities.ts';
import {
  bankWords,
  conditionWords,
  FINDING_WORDS,
  measureWords,
  metWords,
  WINDOW_KIND_WORDS,
  WINDOW_ORIGIN_WORDS,
} from '../words/terms.ts';
import { capturesInOrder } from './captures.ts';
import { judgementBlocks } from './judgement.ts';
import type { SectionMaker } from './section.ts';

/** Every window with its conditions, measures and finding, capture by capture in the order of time. */
export const windows: SectionMaker = {
  id: 'windows',
  build(input) {
    const blocks = capturesInOrder(input.record.captures).flatMap((capture) =>
      windowsOf(capture, input).flatMap((window, i) => windowBlocks(window, i + 1, capture, input)),
    );
    const none: Block = { kind: 'paragraph', tone: 'plain', text: 'No window was marked.' };
    return { id: 'windows', title: 'Windows', blocks: blocks.length === 0 ? [none] : blocks };
  },
};

function windowsOf(capture: CaptureRef, { record }: SheetInput): RecordWindow[] {
  return Object.values(record.windows)
    .filter(({ captureId }) => captureId === capture.id)
    .sort((a, b) => a.startS - b.startS || a.endS - b.endS);
}

/** A window's own name, or its kind and its place in the capture. */
export function windowName(window: RecordWindow, place: number): string {
  return window.name.trim() === '' ? `${WINDOW_KIND_WORDS[window.kind]} ${place}` : window.name;
}

function windowBlocks(window: RecordWindow, place: number, capture: CaptureRef, input: SheetInput): Block[] {
  const sign = input.settings.decimalSign;
  const id = `window.${window.id}`;
  const scored = input.score.windows.find(({ windowId }) => windowId === window.id)?.score ?? null;
  const kept = Object.values(input.record.findings).find(({ windowId }) => windowId === window.id) ?? null;
  return [
    { kind: 'subheading', level: 3, text: `${windowName(window, place)}, in ${capture.name}` },
    whereBlock(id, window, sign),
    ...(scored === null ? [keptBlock(kept)] : scoreBlocks(id, scored, sign)),
  ];
}

function whereBlock(id: string, window: RecordWindow, sign: DecimalSign): Block {
  return {
    kind: 'facts',
    id,
    facts: [
      { id: 'startS', words: 'From', value: numberCell(window.startS, digitsOf(window.startS, 3), 's', sign) },
      { id: 'endS', words: 'To', value: numberCell(window.endS, digitsOf(window.endS, 3), 's', sign) },
      { id: 'bank', words: 'About', value: { kind: 'text', text: bankWords(window.bank) } },
      { id: 'kind', words: 'Kind', value: { kind: 'text', text: WINDOW_KIND_WORDS[window.kind] } },
      { id: 'origin', words: 'Came about', value: { kind: 'text', text: WINDOW_ORIGIN_WORDS[window.origin] } },
    ],
  };
}

function keptBlock(kept: KeptFinding | null): Block {
  const words =
    kept === null
      ? 'Not computed: its capture was not open when the sheet was made.'
      : `Not computed anew: its capture was not open. As found on ${instantWords(kept.madeAt)} by version ${kept.coreVersion}: ${FINDING_WORDS[kept.finding]}. ${kept.sentence}`;
  return { kind: 'paragraph', tone: 'plain', text: words };
}

function scoreBlocks(id: string, score: WindowScore, sign: DecimalSign): Block[] {
  return [...judgementBlocks(id, 4, score, sign), conditionTable(id, score), measureTable(id, score.measures, sign)];
}

function conditionTable(id: string, score: WindowScore): Block {
  return {
    kind: 'table',
    id: `${id}.conditions`,
    caption: 'Conditions',
    columns: [
      { id: 'condition', words: 'Condition', unit: null, align: 'left' },
      { id: 'state', words: 'State', unit: null, align: 'left' },
      { id: 'detail', words: 'What was found', unit: null, align: 'left' },
    ],
    rows: score.conditions.map(({ id: condition, met, detail }) => [
      { kind: 'text', text: conditionWords(condition) },
      { kind: 'text', text: metWords(met) },
      { kind: 'text', text: detail },
    ]),
  };
}

function measureTable(id: string, measures: readonly MeasureValue[], sign: DecimalSign): Block {
  return {
    kind: 'table',
    id: `${id}.measures`,
    caption: 'Measures, with the interval in which the value lies with 95 % confidence',
    columns: [
      { id: 'measure', words: 'Measure', unit: null, align: 'left' },
      { id: 'unit', words: 'Unit', unit: null, align: 'left' },
      { id: 'value', words: 'Value', unit: null, align: 'right' },
      { id: 'low', words: '95 % from', unit: null, align: 'right' },
      { id: 'high', words: 'to', unit: null, align: 'right' },
      { id: 'why', words: 'Why there is no value', unit: null, align: 'left' },
    ],
    rows: measures.map((measure) => measureRow(measure, sign)),
  };
}

const NO_INTERVAL: Cell = { kind: 'none', words: 'not given' };
const NOTHING: Cell = { kind: 'none', words: '–' };

function measureRow({ id, value, interval, missing }: MeasureValue, sign: DecimalSign): Cell[] {
  const { words, unit, digits: most } = measureWords(id);
  const head: Cell[] = [
    { kind: 'text', text: words },
    { kind: 'text', text: unit },
  ];
  if (value === null) {
    return [...head, { kind: 'none', words: 'cannot tell' }, NOTHING, NOTHING, { kind: 'text', text: missing ?? '' }];
  }
  if (interval === null) return [...head, numberCell(value, most, null, sign), NO_INTERVAL, NO_INTERVAL, NOTHING];
  const digits = digitsFor((interval[1] - interval[0]) / 2, most);
  return [
    ...head,
    numberCell(value, digits, null, sign),
    numberCell(interval[0], digits, null, sign),
    numberCell(interval[1], digits, null, sign),
    NOTHING,
  ];
}

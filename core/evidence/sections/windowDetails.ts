import type { ConditionResult } from '../../conditions/condition.ts';
import type { WindowScore } from '../../findings/finding.ts';
import type { MeasureValue } from '../../measures/measure.ts';
import type { Block, Cell, DecimalSign } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { digitsFor, numberCell } from '../words/numbers.ts';
import { instantWords, stretchWords } from '../words/quantities.ts';
import { bankWords, conditionWords, FINDING_WORDS, kindWords, measureWords, metWords } from '../words/terms.ts';
import { judgementBlocks, saidTests } from './judgement.ts';
import { type Same, sameInAll, without } from './sameInWindows.ts';
import type { SectionMaker } from './section.ts';
import { type PlacedWindow, scoresOf, windowsInOrder } from './windows.ts';

/** Conditions, measures and reasons of every window: what a second reader needs to compute it again and disagree. */
export const windowDetails: SectionMaker = {
  id: 'windowDetails',
  build(input) {
    const said = new Set(verdictsOf(input).flatMap((bank) => saidTests(bank).map(({ id }) => id)));
    const blocks = byCapture(windowsInOrder(input)).flatMap((placed) => captureBlocks(placed, input, said));
    return blocks.length === 0 ? null : { id: 'windowDetails', title: 'Windows in detail', blocks };
  },
};

const verdictsOf = ({ score }: SheetInput) => [score.before, score.after].flatMap((stage) => stage?.banks ?? []);

function byCapture(placed: readonly PlacedWindow[]): PlacedWindow[][] {
  const groups = new Map<string, PlacedWindow[]>();
  for (const one of placed) groups.set(one.capture.id, [...(groups.get(one.capture.id) ?? []), one]);
  return [...groups.values()];
}

/** The windows of one capture: first what is the same in all of them, said once. */
function captureBlocks(placed: readonly PlacedWindow[], input: SheetInput, said: Set<string>): Block[] {
  const same = sameInAll(placed.flatMap((one) => toldScores(one, input)));
  const [first] = placed;
  return [
    ...(first === undefined ? [] : sameBlocks(same, first)),
    ...placed.flatMap((one) => detailBlocks(one, input, same, said)),
  ];
}

function sameBlocks(same: Same, { capture }: PlacedWindow): Block[] {
  const id = `capture.${capture.id}.same`;
  const blocks = [
    ...conditionTable(id, same.conditions, 'Conditions that came out the same wherever they were asked'),
    ...missingTable(id, same.missing, 'Why a measure is missing wherever a window below does not give it'),
  ];
  return blocks.length === 0
    ? []
    : [{ kind: 'subheading', level: 3, text: `The same in every window of ${capture.name}` }, ...blocks];
}

function toldScores(placed: PlacedWindow, input: SheetInput): WindowScore[] {
  return scoresOf(placed.window, input).filter((score) => isTold(placed, score));
}

/** Adds the next tests that it says to `said`: each is told where it comes up first. */
function detailBlocks(placed: PlacedWindow, input: SheetInput, same: Same, said: Set<string>): Block[] {
  if (scoresOf(placed.window, input).length === 0) return [heading(placed, null, input), keptBlock(placed, input)];
  return toldScores(placed, input).flatMap((score) => {
    const id = `window.${placed.window.id}.bank${score.bank ?? ''}`;
    const { decimalSign: sign } = input.settings;
    const absent = score.measures.filter(({ value }) => value === null);
    const judgement = judgementBlocks(id, 4, score, sign, said);
    for (const test of saidTests(score)) said.add(test.id);
    return [
      heading(placed, score, input),
      ...judgement,
      ...conditionTable(id, without(same.conditions, score.conditions), 'Conditions'),
      ...givenTable(id, score.measures, sign),
      ...missingTable(id, without(same.missing, absent), 'Measures that the data cannot support'),
    ];
  });
}

/**
 * Whether a window is told in full: every one that a person took or made, and of the program's own offers those that were
 * judged or are a proper test. Idles, snaps and fuel cuts on which nothing could be told stay a row in the list.
 */
function isTold({ window }: PlacedWindow, { finding, kind }: WindowScore): boolean {
  return window.origin !== 'suggested' || finding !== 'cannotTell' || TESTS.has(kind);
}

const TESTS: ReadonlySet<WindowScore['kind']> = new Set(['hold', 'cruise', 'mixed'] as const);

function heading({ window, name, capture }: PlacedWindow, score: WindowScore | null, { settings }: SheetInput): Block {
  const stretch = stretchWords(window.startS, window.endS, settings.decimalSign);
  const bank = bankWords(score === null ? window.bank : score.bank);
  const kind = kindWords(window.kind, score?.kind ?? null);
  return { kind: 'subheading', level: 3, text: `${name}: ${capture.name}, ${stretch}, ${bank}, ${kind}` };
}

function keptBlock({ window }: PlacedWindow, { record }: SheetInput): Block {
  const kept = Object.values(record.findings).find(({ windowId }) => windowId === window.id);
  const words =
    kept === undefined
      ? 'Not computed: its capture was not open when the sheet was made.'
      : `Not computed anew: its capture was not open. As found on ${instantWords(kept.madeAt)} by version ${kept.coreVersion}: ${FINDING_WORDS[kept.finding]}. ${kept.sentence}`;
  return { kind: 'paragraph', tone: 'plain', text: words };
}

function conditionTable(id: string, conditions: readonly ConditionResult[], caption: string): Block[] {
  if (conditions.length === 0) return [];
  return [
    {
      kind: 'table',
      id: `${id}.conditions`,
      caption,
      columns: [
        { id: 'condition', words: 'Condition', unit: null, align: 'left' },
        { id: 'state', words: 'State', unit: null, align: 'left' },
        { id: 'detail', words: 'What was found', unit: null, align: 'left' },
      ],
      rows: conditions.map(({ id: condition, met, detail }) => [
        { kind: 'text', text: conditionWords(condition) },
        { kind: 'text', text: metWords(met) },
        { kind: 'text', text: detail },
      ]),
    },
  ];
}

function givenTable(id: string, measures: readonly MeasureValue[], sign: DecimalSign): Block[] {
  const rows = measures.flatMap((measure) => givenRow(measure, sign) ?? []);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      id: `${id}.measures`,
      caption: 'Measures, with the interval in which the value lies with 95 % confidence',
      columns: [
        { id: 'measure', words: 'Measure', unit: null, align: 'left' },
        { id: 'unit', words: 'Unit', unit: null, align: 'left' },
        { id: 'value', words: 'Value', unit: null, align: 'right' },
        { id: 'low', words: '95 % from', unit: null, align: 'right' },
        { id: 'high', words: 'to', unit: null, align: 'right' },
      ],
      rows,
      narrow: true,
    },
  ];
}

const NO_INTERVAL: Cell = { kind: 'none', words: 'not given' };

/** The row of a measure that has a value, in a list of one; null for one that has none. */
function givenRow({ id, value, interval }: MeasureValue, sign: DecimalSign): [Cell[]] | null {
  if (value === null) return null;
  const { words, unit, digits: most } = measureWords(id);
  const digits = interval === null ? most : digitsFor((interval[1] - interval[0]) / 2, most);
  const cell = (one: number | undefined) => (one === undefined ? NO_INTERVAL : numberCell(one, digits, null, sign));
  return [
    [
      { kind: 'text', text: words },
      { kind: 'text', text: unit },
      cell(value),
      cell(interval?.[0]),
      cell(interval?.[1]),
    ],
  ];
}

function missingTable(id: string, absent: readonly MeasureValue[], caption: string): Block[] {
  if (absent.length === 0) return [];
  return [
    {
      kind: 'table',
      id: `${id}.missing`,
      caption,
      columns: [
        { id: 'measure', words: 'Measure', unit: null, align: 'left' },
        { id: 'value', words: 'Value', unit: null, align: 'left' },
        { id: 'why', words: 'Why', unit: null, align: 'left' },
      ],
      rows: absent.map(({ id: measure, missing }) => [
        { kind: 'text', text: measureWords(measure).words },
        { kind: 'none', words: 'cannot tell' },
        { kind: 'text', text: missing ?? '' },
      ]),
    },
  ];
}

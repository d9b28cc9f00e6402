import type { WindowScore } from '../../findings/finding.ts';
import type { CaptureRef, RecordWindow } from '../../record/schema.ts';
import type { Cell, DecimalSign, Section } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { digitsOf, numberCell } from '../words/numbers.ts';
import { thresholdSentence } from '../words/sure.ts';
import { bankWords, FINDING_WORDS, WINDOW_KIND_WORDS, WINDOW_ORIGIN_WORDS } from '../words/terms.ts';
import { capturesInOrder } from './captures.ts';
import { probabilityCell } from './judgement.ts';
import type { SectionMaker } from './section.ts';

/** Every window on one row for each bank it was judged for; the details come last in the sheet. */
export const windows: SectionMaker = {
  id: 'windows',
  build(input): Section {
    const placed = windowsInOrder(input);
    if (placed.length === 0) {
      return {
        id: 'windows',
        title: 'Windows',
        blocks: [{ kind: 'paragraph', tone: 'plain', text: 'No window was marked.' }],
      };
    }
    return {
      id: 'windows',
      title: 'Windows',
      blocks: [
        {
          kind: 'table',
          id: 'windows',
          caption: `Stretches of the captures that were judged. ${thresholdSentence(input.settings.decimalSign)} Conditions, measures and reasons stand at the end.`,
          columns: [
            { id: 'window', words: 'Window', unit: null, align: 'left' },
            { id: 'capture', words: 'Capture', unit: null, align: 'left' },
            { id: 'startS', words: 'From', unit: 's', align: 'right' },
            { id: 'endS', words: 'To', unit: 's', align: 'right' },
            { id: 'bank', words: 'About', unit: null, align: 'left' },
            { id: 'origin', words: 'Came about', unit: null, align: 'left' },
            { id: 'finding', words: 'Finding', unit: null, align: 'left' },
            { id: 'probabilityNotStoring', words: 'Probability: does not store', unit: '%', align: 'right' },
          ],
          rows: placed.flatMap((one) => rowsOf(one, input)),
        },
      ],
    };
  },
};

/** A window with its name for people and the capture it lies in. */
export interface PlacedWindow {
  readonly window: RecordWindow;
  readonly name: string;
  readonly capture: CaptureRef;
}

/** Capture by capture, in the order of time; a window without a name is called by its kind and its place. */
export function windowsInOrder({ record }: SheetInput): PlacedWindow[] {
  return capturesInOrder(record.captures).flatMap((capture) =>
    Object.values(record.windows)
      .filter(({ captureId }) => captureId === capture.id)
      .sort((a, b) => a.startS - b.startS || a.endS - b.endS)
      .map((window, i) => ({ window, name: nameOf(window, i + 1), capture })),
  );
}

function nameOf({ name, kind }: RecordWindow, place: number): string {
  return name.trim() === '' ? `${WINDOW_KIND_WORDS[kind]} ${place}` : name;
}

/** The scores of a window: one for each bank it was judged for, none where its capture was not open. */
export function scoresOf(window: RecordWindow, { score }: SheetInput): WindowScore[] {
  return score.windows.filter(({ windowId }) => windowId === window.id).map((kept) => kept.score);
}

function rowsOf({ window, name, capture }: PlacedWindow, input: SheetInput): Cell[][] {
  const sign = input.settings.decimalSign;
  const scores = scoresOf(window, input);
  const kept = Object.values(input.record.findings).find(({ windowId }) => windowId === window.id);
  const cells = (bank: RecordWindow['bank'], finding: Cell, probability: Cell): Cell[] => [
    { kind: 'text', text: name },
    { kind: 'text', text: capture.name },
    secondsCell(window.startS, sign),
    secondsCell(window.endS, sign),
    { kind: 'text', text: bankWords(bank) },
    { kind: 'text', text: WINDOW_ORIGIN_WORDS[window.origin] },
    finding,
    probability,
  ];
  if (scores.length > 0) {
    return scores.map((score) =>
      cells(score.bank, { kind: 'text', text: FINDING_WORDS[score.finding] }, shortProbability(score)),
    );
  }
  if (kept === undefined) return [cells(window.bank, NOT_COMPUTED, NOT_COMPUTED)];
  const finding: Cell = { kind: 'text', text: `${FINDING_WORDS[kept.finding]} (kept)` };
  return [cells(window.bank, finding, shortProbability(kept))];
}

/** In the list there is room for "not given" alone; beside the verdict it says why. */
function shortProbability({
  finding,
  probabilityNotStoring,
}: Pick<WindowScore, 'finding' | 'probabilityNotStoring'>): Cell {
  const cell = probabilityCell(finding, probabilityNotStoring);
  return cell.kind === 'none' ? { kind: 'none', words: 'not given' } : cell;
}

const NOT_COMPUTED: Cell = { kind: 'none', words: 'not computed' };

function secondsCell(seconds: number, sign: DecimalSign): Cell {
  return numberCell(seconds, digitsOf(seconds, 3), null, sign);
}

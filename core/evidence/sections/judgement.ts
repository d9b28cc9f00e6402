// A judgement as a laboratory reports it: result, how sure, what stands in the way, why, why not, what next. Verdicts and
// windows are told the same way.

import type { Blocker, Finding, NextTest, Reason } from '../../findings/finding.ts';
import type { Block, Cell, DecimalSign, Fact } from '../sheet.ts';
import { numberCell, probabilityWords } from '../words/numbers.ts';
import { givenProbability, NOT_GIVEN, thresholdSentence, weightsSentence } from '../words/sure.ts';
import { FINDING_WORDS } from '../words/terms.ts';

export interface Judgement {
  readonly finding: Finding;
  readonly probabilityNotStoring: number | null;
  readonly blockers: readonly Blocker[];
  readonly reasons: readonly Reason[];
  readonly nextTests: readonly NextTest[];
}

/** What the sheet says next to do at all: this many tests of each judgement. */
const TESTS_SAID = 3;

/**
 * Facts, blockers, reasons and next tests. `id` begins the ids of its tables, `level` is that of its own headings. Further
 * down the sheet, `said` names the next tests that it has said before: they are left out, and so is from where on what is
 * said.
 */
export function judgementBlocks(
  id: string,
  level: 3 | 4,
  judgement: Judgement,
  sign: DecimalSign,
  said: ReadonlySet<string> | null = null,
): Block[] {
  return [
    {
      kind: 'facts',
      id: `${id}.finding`,
      facts: [
        { id: 'finding', words: 'Finding', value: { kind: 'text', text: FINDING_WORDS[judgement.finding] } },
        {
          id: 'probabilityNotStoring',
          words: 'Probability that it does not store oxygen',
          value: probabilityCell(judgement.finding, judgement.probabilityNotStoring),
        },
        ...(judgement.finding === 'weak' && said === null ? [whatIsSaid(sign)] : []),
      ],
    },
    ...blockerBlocks(level, judgement.blockers),
    ...reasonBlocks(id, judgement, sign),
    ...nextBlocks(
      level,
      saidTests(judgement).filter((test) => said?.has(test.id) !== true),
    ),
  ];
}

function whatIsSaid(sign: DecimalSign): Fact {
  return { id: 'thresholds', words: 'What is said from where', value: { kind: 'text', text: thresholdSentence(sign) } };
}

/** A probability as a number of per cent; why not where none is given beside this finding. */
export function probabilityCell(finding: Finding, probabilityNotStoring: number | null): Cell {
  const probability = givenProbability(finding, probabilityNotStoring);
  if (probability === null) return { kind: 'none', words: NOT_GIVEN };
  const [shown = ''] = probabilityWords(probability).split(/\u00a0(?=%)/);
  return { kind: 'number', value: Number((100 * probability).toFixed(1)), shown, unit: '%' };
}

function blockerBlocks(level: 3 | 4, blockers: readonly Blocker[]): Block[] {
  if (blockers.length === 0) return [];
  return [
    { kind: 'subheading', level, text: 'What stands in the way of a finding' },
    { kind: 'list', items: blockers.map(({ words }) => words) },
  ];
}

function reasonBlocks(id: string, { finding, reasons }: Judgement, sign: DecimalSign): Block[] {
  if (reasons.length === 0) return [];
  return [
    {
      kind: 'table',
      id: `${id}.reasons`,
      caption: `Reasons, strongest first. ${weightsSentence(sign)}`,
      columns: [
        { id: 'reason', words: 'Reason', unit: null, align: 'left' },
        { id: 'for', words: 'Speaks for', unit: null, align: 'left' },
        { id: 'side', words: 'For or against', unit: null, align: 'left' },
        { id: 'weight', words: 'Weight', unit: '1', align: 'right' },
      ],
      rows: reasons.map((reason) => [
        { kind: 'text', text: reason.detail },
        { kind: 'text', text: FINDING_WORDS[reason.for] },
        { kind: 'text', text: sideOf(reason, finding) },
        numberCell(reason.weight, 1, null, sign),
      ]),
    },
  ];
}

/** "Stores weakly" lies between the two that reasons speak for: none of them is for it or against it by itself. */
function sideOf(reason: Reason, finding: Finding): string {
  if (reason.for === finding) return 'for';
  return finding === 'cannotTell' || finding === 'weak' ? 'open' : 'against';
}

/** The next tests that the sheet names, best first. */
export function saidTests({ nextTests }: Pick<Judgement, 'nextTests'>): readonly NextTest[] {
  return nextTests.slice(0, TESTS_SAID);
}

function nextBlocks(level: 3 | 4, tests: readonly NextTest[]): Block[] {
  if (tests.length === 0) return [];
  return [
    { kind: 'subheading', level, text: 'What to test next' },
    {
      kind: 'list',
      items: tests.map(({ words, why, minutes }) => `${words} ${why} About ${minutes}\u00a0min.`),
    },
  ];
}

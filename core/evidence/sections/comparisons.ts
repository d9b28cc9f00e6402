import { scatterSentence } from '../../compare/beyondScatter.ts';
import type { MeasurePair } from '../../compare/comparison.ts';
import { partGiven } from '../../compare/neitherGives.ts';
import type { Block, Cell, DecimalSign } from '../sheet.ts';
import type { SheetComparison } from '../sheetInput.ts';
import { numberCell } from '../words/numbers.ts';
import type { SectionMaker } from './section.ts';

/** Windows over each other: what was not alike first, then the measures side by side. */
export const comparisons: SectionMaker = {
  id: 'comparisons',
  build({ comparisons: compared, settings }) {
    if (compared.length === 0) return null;
    return {
      id: 'comparisons',
      title: 'Comparison',
      blocks: compared.flatMap((one, i) => comparisonBlocks(one, i + 1, settings.decimalSign)),
    };
  },
};

function comparisonBlocks({ first, second, comparison }: SheetComparison, place: number, sign: DecimalSign): Block[] {
  const { given, neither } = partGiven(comparison.pairs);
  const scatter = scatterSentence(given);
  return [
    { kind: 'subheading', level: 3, text: `${first} against ${second}` },
    { kind: 'paragraph', tone: 'plain', text: comparison.sentence },
    ...(comparison.unlike.length === 0
      ? []
      : [{ kind: 'list', items: comparison.unlike.map(({ words }) => words) } satisfies Block]),
    {
      kind: 'table',
      id: `comparison.${place}`,
      caption: `Measures of ${first} (first) and of ${second} (second)`,
      columns: [
        { id: 'measure', words: 'Measure', unit: null, align: 'left' },
        { id: 'unit', words: 'Unit', unit: null, align: 'left' },
        { id: 'first', words: 'First', unit: null, align: 'right' },
        { id: 'second', words: 'Second', unit: null, align: 'right' },
        { id: 'difference', words: 'Second less first', unit: null, align: 'right' },
        { id: 'low', words: '95 % from', unit: null, align: 'right' },
        { id: 'high', words: 'to', unit: null, align: 'right' },
      ],
      rows: given.map((pair) => [
        { kind: 'text', text: pair.words },
        { kind: 'text', text: pair.unit },
        side(pair.first, pair, sign),
        side(pair.second, pair, sign),
        side(pair.difference, pair, sign),
        limit(pair.interval?.[0], pair, sign),
        limit(pair.interval?.[1], pair, sign),
      ]),
    },
    ...(scatter === null ? [] : [{ kind: 'paragraph', tone: 'small', text: scatter } satisfies Block]),
    ...(neither === null ? [] : [{ kind: 'paragraph', tone: 'small', text: neither } satisfies Block]),
  ];
}

function side(value: number | null, { digits }: MeasurePair, sign: DecimalSign): Cell {
  return value === null ? { kind: 'none', words: 'cannot tell' } : numberCell(value, digits, null, sign);
}

function limit(value: number | undefined, { digits }: MeasurePair, sign: DecimalSign): Cell {
  return value === undefined ? { kind: 'none', words: 'not given' } : numberCell(value, digits, null, sign);
}

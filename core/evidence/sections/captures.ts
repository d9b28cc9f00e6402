import { repairOf } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import type { CaptureRef } from '../../record/schema.ts';
import { warningRow } from '../../words/warningRow.ts';
import type { Block, Cell, DecimalSign } from '../sheet.ts';
import type { CaptureFacts, SheetInput } from '../sheetInput.ts';
import { digitsFor, numberCell, textCell } from '../words/numbers.ts';
import { instantWords } from '../words/quantities.ts';
import { CAPTURE_KIND_WORDS, roleWords } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** Every capture with what identifies it, what it holds and what was found odd about it, and its pictures. */
export const captures: SectionMaker = {
  id: 'captures',
  build(input) {
    const listed = capturesInOrder(input.record.captures);
    const none: Block = { kind: 'paragraph', tone: 'plain', text: 'No capture was recorded.' };
    return {
      id: 'captures',
      title: 'Captures',
      blocks: listed.length === 0 ? [none] : listed.flatMap((capture) => captureBlocks(capture, input)),
    };
  },
};

/** In the order in which they were added. */
export function capturesInOrder(map: Readonly<Record<string, CaptureRef>>): CaptureRef[] {
  return Object.values(map).sort((a, b) => Date.parse(a.addedAt) - Date.parse(b.addedAt) || (a.id < b.id ? -1 : 1));
}

function captureBlocks(capture: CaptureRef, { captures: facts, pictures, settings }: SheetInput): Block[] {
  const read = facts[capture.id] ?? null;
  return [
    { kind: 'subheading', level: 3, text: capture.name },
    identity(capture, read, settings.decimalSign),
    ...(read === null ? [NOT_OPEN] : channels(capture.id, read, settings.decimalSign)),
    ...(read === null || read.warnings.length === 0 ? [] : found(read)),
    ...pictures
      .filter(({ captureId }) => captureId === capture.id)
      .map(({ captureId: _, ...picture }): Block => ({ kind: 'figure', ...picture })),
  ];
}

const NOT_OPEN: Block = {
  kind: 'paragraph',
  tone: 'small',
  text: 'This capture was not open when the sheet was made: its channels are not listed and its windows not computed anew.',
};

function identity(capture: CaptureRef, read: CaptureFacts | null, sign: DecimalSign): Block {
  const clock = read?.startClock ?? null;
  return {
    kind: 'facts',
    id: `capture.${capture.id}`,
    facts: [
      { id: 'kind', words: 'Shows', value: { kind: 'text', text: CAPTURE_KIND_WORDS[capture.kind] } },
      { id: 'sha256', words: 'SHA-256', value: { kind: 'text', text: capture.sha256 } },
      { id: 'bytes', words: 'Size', value: numberCell(capture.bytes, 0, 'B', sign) },
      { id: 'rows', words: 'Rows', value: numberCell(capture.rows, 0, '1', sign) },
      { id: 'durationS', words: 'Length', value: numberCell(capture.durationS, 1, 's', sign) },
      { id: 'startClock', words: 'Clock at its start', value: textCell(clock === null ? '' : instantWords(clock)) },
      { id: 'addedAt', words: 'Added', value: { kind: 'text', text: instantWords(capture.addedAt) } },
      { id: 'layout', words: 'Layout', value: textCell(read?.layout.words ?? '') },
      { id: 'sample', words: 'Invented sample', value: { kind: 'text', text: capture.sample ? 'yes' : 'no' } },
    ],
  };
}

function channels(id: string, read: CaptureFacts, sign: DecimalSign): Block[] {
  return [
    {
      kind: 'table',
      id: `capture.${id}.channels`,
      caption: 'Channels',
      columns: [
        { id: 'name', words: 'Name in the file', unit: null, align: 'left' },
        { id: 'role', words: 'Read as', unit: null, align: 'left' },
        { id: 'unit', words: 'Unit', unit: null, align: 'left' },
        { id: 'samples', words: 'Samples', unit: '1', align: 'right' },
        { id: 'medianRateHz', words: 'Rate, median', unit: 'Hz', align: 'right' },
        { id: 'renewalRateHz', words: 'New values', unit: 'Hz', align: 'right' },
        { id: 'jitterMs', words: 'Jitter', unit: 'ms', align: 'right' },
      ],
      rows: read.channels.map((channel) => [
        textCell(channel.name),
        { kind: 'text', text: roleWords(channel.role, channel.bank) },
        { kind: 'text', text: channel.unit },
        numberCell(channel.samples, 0, null, sign),
        rateCell(channel.facts.medianRateHz, sign),
        rateCell(channel.facts.renewalRateHz, sign),
        numberCell(channel.facts.jitterS * 1000, 0, null, sign),
      ]),
    },
  ];
}

function rateCell(rateHz: number, sign: DecimalSign): Cell {
  return numberCell(rateHz, digitsFor(rateHz / 100, 2), null, sign);
}

function found(read: CaptureFacts): Block[] {
  return [
    { kind: 'subheading', level: 4, text: 'What was found while reading it' },
    { kind: 'list', items: read.warnings.map(wordsOf) },
  ];
}

/** A second reader sees what reading changed, and what a person has put back. */
function wordsOf(warning: CaptureWarning): string {
  const repair = repairOf(warning);
  const state = repair === null ? '' : repair.made ? '(repaired)' : '(the repair was undone)';
  return [warning.detail, warningRow(warning), state].filter((part) => part !== '').join(' ');
}

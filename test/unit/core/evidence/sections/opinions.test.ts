import { describe, expect, it } from 'vitest';
import { buildSheet } from '../../../../../core/evidence/buildSheet.ts';
import { SHEET_FORMATS, sheetFormat } from '../../../../../core/evidence/formats/index.ts';
import type { SheetInput } from '../../../../../core/evidence/sheetInput.ts';
import { SIGNING_DOES_NOT_SHOW } from '../../../../../core/evidence/words/opinions.ts';
import { sheetInput } from '../../../../support/sheetInput.ts';

function named(change: Partial<SheetInput> = {}): SheetInput {
  const input = { ...sheetInput(), ...change };
  return { ...input, settings: { ...input.settings, include: { ...input.settings.include, signers: true } } };
}
const sectionOf = (input: SheetInput) => buildSheet(input).sections.find(({ id }) => id === 'opinions');
const textOf = (input: SheetInput) => JSON.stringify(sectionOf(input)).replaceAll('\u00a0', ' ');
function factsOf(input: SheetInput, opinion: string) {
  const block = sectionOf(input)?.blocks.find((one) => one.kind === 'facts' && one.id === `opinion.${opinion}`);
  if (block?.kind !== 'facts') throw new Error(`no facts of ${opinion}`);
  return Object.fromEntries(
    block.facts.map(({ id, value }) => [
      id,
      value.kind === 'text' ? value.text : value.kind === 'none' ? value.words : value.value,
    ]),
  );
}

describe('opinions on the sheet', () => {
  it('come before the blank lines for a second reader, which stay', () => {
    const ids = buildSheet(sheetInput()).sections.map(({ id }) => id);
    expect(ids.indexOf('secondReader')).toBe(ids.indexOf('opinions') + 1);
  });

  it('tell who, when, what, how sure, why and what next', () => {
    expect(factsOf(named(), 'o1')).toMatchObject({
      finding: 'Does not store oxygen',
      confidence: 85,
      confidenceWords: 'very likely',
      author: 'First reader',
      licence: 'L-0001, invented',
      signedAt: '2026-11-24 09:00 +01:00',
      coreVersion: '0.1.0',
      reasons: 'The rear sensor follows the front one through the whole hold.',
      nextTest: 'Smoke the exhaust ahead of the rear sensor.',
    });
  });

  it('mark what was withdrawn, by whom and why, and leave it standing', () => {
    expect(factsOf(named(), 'o1').withdrawn).toBe(
      'First reader, 2026-11-24 12:00 +01:00: The second reader is right about the speed.',
    );
    expect(textOf(named())).toContain('Does not store oxygen (withdrawn)');
    expect(factsOf(named(), 'o2').withdrawn).toBeUndefined();
  });

  it('say what an answer answers, why it disagrees, and what differs first', () => {
    const { answers, differs } = factsOf(named(), 'o2');
    expect(answers).toBe('First reader, 2026-11-24 09:00 +01:00; disagrees because a condition is read otherwise');
    expect(differs).toMatch(/same windows.*judge differently/);
  });

  it('list the windows as they stood, with what the core said and the hash of the capture', () => {
    const table = sectionOf(named())?.blocks.find((one) => one.kind === 'table' && one.id === 'opinion.o1.windows');
    expect(JSON.stringify(table).replaceAll('\u00a0', ' ')).toMatch(
      /Hold, 61\.2 to 121\.2 s, bank 1, van-before\.csv.*does not store oxygen, 97 % sure.*ba7816bf/,
    );
  });

  it('say where the chain is broken', () => {
    const [first, second, third] = sheetInput().opinions;
    if (!first || !second || !third) throw new Error('three links were made');
    const opinions = [{ ...first, state: 'beforeBreak' as const }, { ...second, state: 'broken' as const }, third];
    expect(factsOf(named({ opinions }), 'o1').chain).toMatch(/changed or taken away after others had signed/);
    expect(factsOf(named({ opinions }), 'o2').chain).toMatch(/not here as it was/);
  });

  it('leave names out by default, and number the signers so that each is still one', () => {
    const text = textOf(sheetInput());
    expect(text).not.toContain('First reader');
    expect(factsOf(sheetInput(), 'o1')).toMatchObject({
      author: 'left out of this copy',
      withdrawn: expect.stringMatching(/^Reader 1, /),
    });
    expect(factsOf(sheetInput(), 'o2').answers).toMatch(/^Reader 1, /);
    expect(text).toContain('Reader 2, 2026-11-24 11:00 +01:00: Cannot tell yet');
  });

  it('are no section where nothing is signed', () => {
    expect(sectionOf({ ...sheetInput(), opinions: [] })).toBeUndefined();
  });

  it.each(SHEET_FORMATS.map(({ id }) => id))('are in %s, with what a signature does not show', (id) => {
    const text = sheetFormat(id)?.write(buildSheet(named())).replaceAll('\\', '') ?? '';
    for (const part of ['Second reader', 'this hold should not be judged', 'very likely', SIGNING_DOES_NOT_SHOW]) {
      expect(text).toContain(part);
    }
  });
});

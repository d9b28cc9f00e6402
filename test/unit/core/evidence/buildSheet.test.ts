import { describe, expect, test } from 'vitest';
import type { WarningId } from '../../../../core/capture/warnings.ts';
import { buildSheet } from '../../../../core/evidence/buildSheet.ts';
import { cellWords, columnWords } from '../../../../core/evidence/formats/html.ts';
import { SECTIONS } from '../../../../core/evidence/sections/index.ts';
import type { Block, Sheet } from '../../../../core/evidence/sheet.ts';
import type { SheetInput } from '../../../../core/evidence/sheetInput.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { sheetInput } from '../../../support/sheetInput.ts';

const sheet = buildSheet(sheetInput());

/** Every text of a section, in order, as a reader meets them. */
function textsOf(id: string, of: Sheet = sheet): string[] {
  return of.sections.find((section) => section.id === id)?.blocks.flatMap(blockTexts) ?? [];
}

function blockTexts(block: Block): string[] {
  if (block.kind === 'list') return [...block.items];
  if (block.kind === 'facts') return block.facts.map(({ words, value }) => `${words}: ${cellWords(value)}`);
  if (block.kind === 'table') {
    return [block.columns.map(columnWords), ...block.rows.map((row) => row.map(cellWords))].map((row) =>
      row.join(' | '),
    );
  }
  if (block.kind === 'figure') return [block.caption];
  return block.kind === 'blanks' ? [...block.lines] : [block.text];
}

const withRecord = (change: (record: SheetInput['record']) => SheetInput['record']): Sheet => {
  const input = sheetInput();
  return buildSheet({ ...input, record: change(input.record) });
};

describe('the evidence sheet', () => {
  test('says of each repair whether it was made or undone, and of anything else only what it is', () => {
    const input = sheetInput();
    const read = input.captures.c1;
    if (read === undefined) throw new Error('no capture');
    const of = (id: WarningId, repaired: boolean) => ({ id, detail: `${id}.`, row: 3, count: 1, repaired });
    const warnings = [of('gap', false), of('clockPastMidnight', true), of('duplicateTimes', false)];
    const texts = textsOf('captures', buildSheet({ ...input, captures: { c1: { ...read, warnings } } }));
    expect(texts).toEqual(
      expect.arrayContaining([
        'gap. Row 3.',
        'clockPastMidnight. Row 3. (repaired)',
        'duplicateTimes. Row 3. (the repair was undone)',
      ]),
    );
  });

  test('begins with the verdict in words, then how sure, why, why not and what next', () => {
    const texts = textsOf('result');
    expect(texts[0]).toBe(
      'Converter of bank 1: does not store oxygen (97 %). One window, one thermal pair; no rule-out open.',
    );
    expect(texts).toContain('Finding: Does not store oxygen');
    expect(texts).toContain('Probability that it does not store oxygen: 97\u00a0%');
    expect(texts).toContain(
      'The rear sensor switches 0.82 times as often as the front one. | Does not store oxygen | for | 3.2',
    );
    expect(texts).toContain(
      'The outlet is cooler than the inlet, which weighs little. | Stores oxygen | against | −0.2',
    );
    expect(texts.at(-1)).toMatch(/^Check for a leak with smoke\..*15\u00a0min\.$/);
  });

  test('says that sample drives are invented', () => {
    expect(textsOf('result')[1]).toContain('invented');
    const real = withRecord((record) => ({
      ...record,
      captures: Object.fromEntries(Object.entries(record.captures).map(([id, one]) => [id, { ...one, sample: false }])),
    }));
    expect(textsOf('result', real).join()).not.toContain('invented');
  });

  test('lists every window on one row for each bank it was judged for', () => {
    expect(textsOf('windows')[1]).toBe(
      'Hold at 2300 | van-before.csv | 61.2 | 121.2 | bank\u00a01 | offer accepted | Does not store oxygen | 95\u00a0%',
    );
    const input = sheetInput();
    const [one] = input.score.windows;
    if (one === undefined) throw new Error('the made-up vehicle has no scored window');
    const other = { ...one, score: { ...one.score, bank: 2 as const } };
    const two = buildSheet({ ...input, score: { ...input.score, windows: [one, other] } });
    expect(textsOf('windows', two)).toHaveLength(3);
    expect(textsOf('windowDetails', two).filter((text) => text.startsWith('Hold at 2300:'))).toEqual([
      'Hold at 2300: van-before.csv, 61.2 to 121.2\u00a0s, bank\u00a01, hold',
      'Hold at 2300: van-before.csv, 61.2 to 121.2\u00a0s, bank\u00a02, hold',
    ]);
  });

  test('an offer that nobody took is told in full only where it was judged or is a proper test', () => {
    const input = sheetInput();
    const [one] = input.score.windows;
    const { w1 } = input.record.windows;
    if (one === undefined || w1 === undefined) throw new Error('the made-up vehicle has no scored window');
    const details = (origin: 'suggested' | 'accepted', finding: 'cannotTell' | 'weak', kind: 'idle' | 'hold') =>
      textsOf(
        'windowDetails',
        buildSheet({
          ...input,
          record: { ...input.record, windows: { w1: { ...w1, origin, kind } } },
          score: { ...input.score, windows: [{ ...one, score: { ...one.score, finding, kind } }] },
        }),
      ).length > 0;
    expect(details('suggested', 'cannotTell', 'idle')).toBe(false);
    expect(details('accepted', 'cannotTell', 'idle')).toBe(true);
    expect(details('suggested', 'weak', 'idle')).toBe(true);
    expect(details('suggested', 'cannotTell', 'hold')).toBe(true);
  });

  test('tells conditions by sign and word, with what was found', () => {
    const texts = textsOf('windowDetails');
    expect(texts).toContain('Engine warm | ✓ met | Coolant 88 to 91 °C.');
    expect(texts.find((text) => text.includes('✗ not met'))).toContain('Speed 1900 to 2600 1/min.');
    expect(texts.find((text) => text.includes('– not recorded'))).toContain('Readiness');
    expect(texts.indexOf('Engine speed was not steady: 1900 to 2600 1/min.')).toBeLessThan(
      texts.findIndex((text) => text.startsWith('Reason |')),
    );
  });

  test('gives measures as many digits as their interval deserves, and says why one is missing', () => {
    const texts = textsOf('windowDetails');
    expect(texts).toContain('Switching, rear over front | 1 | 0.8 | 0.6 | 1.0');
    expect(texts.find((text) => text.startsWith('Mean, rear'))).toContain('| V | 0.45 | not given | not given');
    expect(texts.find((text) => text.includes('The rate of 3 Hz'))).toContain('| cannot tell | ');
  });

  test('identifies captures by SHA-256 and tells what was found while reading them', () => {
    const texts = textsOf('captures');
    expect(texts).toContain('SHA-256: ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(texts).toContain('No rows for 2.1 s after row 900. Row 900.');
    expect(texts).toContain('O2 B1S1 (V) | Upstream oxygen sensor, bank\u00a01 | V | 4128 | 10.00 | 10.00 | 0');
    expect(texts.at(-1)).toBe('Traces of van-before.csv');
  });

  test('a capture that is not open is told from the record alone, its windows from the findings kept', () => {
    const closed = buildSheet({ ...sheetInput(), captures: {}, score: { ...sheetInput().score, windows: [] } });
    expect(textsOf('captures', closed).join()).toContain('was not open');
    expect(textsOf('windows', closed)[1]).toContain('Does not store oxygen (kept) | 97');
    expect(textsOf('windowDetails', closed).join()).toContain('As found on 2026-11-24 08:31 +01:00 by version 0.1.0');
  });

  test('temperatures stand in the chosen unit and as they were typed', () => {
    const { settings } = sheetInput();
    const inF = buildSheet({ ...sheetInput(), settings: { ...settings, temperatureUnit: 'F' } });
    expect(textsOf('temperatures').slice(0, 2)).toEqual([
      'Where | Inlet, °C | Outlet, °C | Rise, K | 95 % from, K | to, K',
      'bank\u00a01, converter 1 | 260 | 196 | −64 | −90 | −40',
    ]);
    expect(textsOf('temperatures', inF)[1]).toBe('bank\u00a01, converter 1 | 500 | 384 | −116 | −162 | −72');
    expect(textsOf('temperatures')[3]).toContain('500\u00a0°F | 384\u00a0°F | 2300 | 0.95');
  });

  test('codes have meanings, and a catalyst code is said to be no proof', () => {
    const texts = textsOf('troubleCodes');
    expect(texts).toContain('P0420 | confirmed | catalyst system efficiency below threshold, bank 1');
    expect(texts.at(-1)).toContain('no proof');
    const other = withRecord((record) => ({
      ...record,
      troubleCodes: { t: { id: 't', code: 'P1234', status: 'unknown' } },
    }));
    expect(textsOf('troubleCodes', other)[1]).toContain("P1234 | not recorded | one of the maker's own");
    expect(textsOf('troubleCodes', other).join()).not.toContain('no proof');
  });

  test('check 2.12: every item of the EPA policy of 1986 has its place, and an empty one prints as not recorded', () => {
    const bare = newVehicle({ id: 'v', name: 'Van', createdAt: '2026-11-24T08:00:00Z' });
    const texts = textsOf(
      'papers',
      withRecord(() => bare),
    );
    for (const item of [
      "Customer's name and address",
      'Make of the vehicle',
      'Model year',
      'Mileage',
      'Reason for the replacement',
      'Ordered by a state or local inspection',
      'Statement of need signed by customer and shop',
      'Part fitted',
      'Fitted on',
      'Tag on the old converter',
    ]) {
      expect(texts).toContain(`${item}: not recorded`);
    }
    expect(texts.join()).toContain('A trouble code alone does not show the need');
    expect(texts.join()).toMatch(/6 months.*15 days/);
  });

  test('says what a hash shows and what it does not', () => {
    const text = textsOf('promises').join(' ');
    for (const part of [
      'still the one',
      'not show who made',
      'when it was made',
      'came from this vehicle',
      'left out',
      'another path',
    ]) {
      expect(text).toContain(part);
    }
    expect(sheet.foot).toBe('Van 14 · 2026-11-24 · ba7816bf8f01');
    expect(buildSheet({ ...sheetInput(), hash: null }).foot).toBe('Van 14 · 2026-11-24');
  });

  test('leaves room for a second reader to disagree and sign', () => {
    const texts = textsOf('secondReader');
    expect(texts).toContain('Where I read differently, and why');
    expect(texts).toContain('Date and signature');
  });

  test('an empty vehicle makes a sheet too, without an empty cell in it', () => {
    const bare = newVehicle({ id: 'v', name: 'Van', createdAt: '2026-11-24T08:00:00Z' });
    const input = { ...sheetInput(), record: bare, captures: {}, pictures: [], comparisons: [], hash: null };
    const made = buildSheet({ ...input, score: { ...input.score, windows: [], thermal: [] } });
    for (const { id } of made.sections) for (const text of textsOf(id, made)) expect(text).not.toMatch(/\| *\||: *$/);
    expect(textsOf('vehicle', made)).toContain('Mileage: not recorded');
    expect(textsOf('captures', made)).toEqual(['No capture was recorded.']);
  });

  test('every section is registered under the id it makes, and has a title', () => {
    for (const maker of SECTIONS) {
      const section = maker.build(sheetInput());
      expect(section?.id).toBe(maker.id);
      expect(section?.title).toMatch(/^[A-Z]/);
    }
  });

  test('tables are whole: as many cells as columns, each column named', () => {
    for (const { blocks } of sheet.sections) {
      for (const block of blocks) {
        if (block.kind !== 'table') continue;
        for (const row of block.rows) expect(row, block.id).toHaveLength(block.columns.length);
        for (const column of block.columns) expect(column.words).not.toBe('');
      }
    }
  });

  test('E11: a space stands between every number and its unit', () => {
    const all = sheet.sections.flatMap(({ id }) => textsOf(id)).join('\n');
    expect(all).not.toMatch(/\d(°C|°F|%|Hz\b|V\b|km\b|mi\b|min\b)/);
  });
});

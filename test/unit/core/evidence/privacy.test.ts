// T-PRIV-1 and T-PRIV-2: what belongs to a person is in no export unless it was ticked.

import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../../../core/evidence/buildSheet.ts';
import { SHEET_FORMATS } from '../../../../core/evidence/formats/index.ts';
import { NOTE_FILE_KINDS, notesFile } from '../../../../core/evidence/notes/notesFile.ts';
import { leftOutWords, vinCell, withoutPrivate } from '../../../../core/evidence/privacy.ts';
import { type Included, NOTHING_PRIVATE } from '../../../../core/evidence/sheetInput.ts';
import { sheetInput } from '../../../support/sheetInput.ts';

const CANARIES = {
  vin: 'QUAYSIDE',
  plate: 'PLATECANARY',
  customer: 'CUSTOMERCANARY',
  complaint: 'COMPLAINTCANARY',
  signers: 'SIGNERCANARY',
} as const;
const FIELDS = ['vin', 'plate', 'customer', 'complaint', 'signers'] as const;
/** What was signed goes with a record in whole. */
const RECORD_FIELDS = ['vin', 'plate', 'customer', 'complaint'] as const;

function inputWith(include: Included) {
  const input = sheetInput();
  const identity = {
    ...input.record.identity,
    vin: `AB1CD${CANARIES.vin}123`,
    plate: CANARIES.plate,
    customer: `Mr ${CANARIES.customer}\nStreet 5\n+00 000 000\nmail@example.org`,
    complaint: CANARIES.complaint,
  };
  const author = { name: CANARIES.signers, licence: `Licence ${CANARIES.signers}` };
  const opinions = Object.values(input.record.opinions).map((entry) => ({ ...entry, author }));
  return {
    ...input,
    record: { ...input.record, identity, opinions: Object.fromEntries(opinions.map((one) => [one.id, one])) },
    opinions: input.opinions.map((link, i) => ({ ...link, entry: opinions[i] ?? link.entry })),
    settings: { ...input.settings, include },
  };
}

/** Every export as one text. What a format escapes is taken back, so that no canary hides behind an entity. */
function everything(include: Included): string {
  const input = inputWith(include);
  const sheet = buildSheet(input);
  const files = [
    ...SHEET_FORMATS.map((format) => format.write(sheet)),
    ...NOTE_FILE_KINDS.map((kind) => notesFile(input.record, kind, '.')),
  ];
  return [...files, sheet.title, sheet.foot].join('\n').replaceAll('\\', '').replaceAll('&#39;', "'");
}

describe('T-PRIV-1', () => {
  test('by default no private field is in any export, and the vehicle number lacks its last six characters', () => {
    const text = everything(NOTHING_PRIVATE);
    for (const canary of [
      CANARIES.plate,
      CANARIES.customer,
      CANARIES.complaint,
      CANARIES.signers,
      'Street 5',
      '+00 000',
      'mail@',
    ]) {
      expect(text).not.toContain(canary);
    }
    expect(text).toContain('AB1CDQUAYS');
    expect(text).not.toContain('AB1CDQUAYSI');
  });

  test.each(FIELDS)('%s alone comes in when it is ticked', (field) => {
    const text = everything({ ...NOTHING_PRIVATE, [field]: true });
    for (const other of FIELDS) expect(text.includes(CANARIES[other]), other).toBe(other === field);
  });

  test('the sheet says what it leaves out, and nothing that was never recorded', () => {
    const { identity, opinions } = inputWith(NOTHING_PRIVATE).record;
    expect(leftOutWords({ identity, opinions }, NOTHING_PRIVATE)).toEqual([
      'the last six characters of the vehicle number',
      'the number plate',
      "the customer's name and address",
      "the customer's complaint",
      'the names and licences under signed opinions',
    ]);
    expect(leftOutWords({ identity, opinions }, { ...NOTHING_PRIVATE, plate: true, vin: true })).toHaveLength(3);
    const bare = { ...identity, vin: '', plate: ' ', customer: '', complaint: '' };
    expect(leftOutWords({ identity: bare, opinions: {} }, NOTHING_PRIVATE)).toEqual([]);
    expect(everything(NOTHING_PRIVATE)).toContain('For privacy this copy leaves out:');
  });

  test('a short vehicle number is left out whole', () => {
    expect(vinCell('123456', false)).toEqual({ kind: 'none', words: 'left out of this copy' });
    expect(vinCell('1234567', false)).toMatchObject({ text: '1······ (last six left out)' });
    expect(vinCell('', false)).toEqual({ kind: 'none', words: 'not recorded' });
    expect(vinCell(' 1234567 ', true)).toEqual({ kind: 'text', text: '1234567' });
  });
});

describe('a record that is handed over', () => {
  const { record } = inputWith(NOTHING_PRIVATE);

  test('holds no private field by default, and everything else', () => {
    const given = withoutPrivate(record, NOTHING_PRIVATE);
    const text = JSON.stringify(given);
    for (const field of RECORD_FIELDS) expect(text).not.toContain(CANARIES[field]);
    expect(given.identity.vin).toBe('AB1CDQUAYS');
    expect({ ...given, identity: record.identity }).toEqual(record);
  });

  test.each(RECORD_FIELDS)('holds %s where it was ticked, and no other', (field) => {
    const text = JSON.stringify(withoutPrivate(record, { ...NOTHING_PRIVATE, [field]: true }));
    for (const other of RECORD_FIELDS) expect(text.includes(CANARIES[other]), other).toBe(other === field);
  });

  test('is the record itself where everything was ticked', () => {
    const all = { vin: true, plate: true, customer: true, complaint: true, signers: true };
    expect(withoutPrivate(record, all)).toEqual(record);
  });
});

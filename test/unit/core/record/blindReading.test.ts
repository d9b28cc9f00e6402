import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { lookingWords } from '../../../../core/evidence/words/opinions.ts';
import { checkOpinions } from '../../../../core/opinions/chain.ts';
import { isReadBlind, lookedAt, readingNow, shownOf, startBlindReading } from '../../../../core/record/blindReading.ts';
import { addNote } from '../../../../core/record/edits/notes.ts';
import { look, perform, redo, sign, startHistory, undo } from '../../../../core/record/history.ts';
import { readRecord } from '../../../../core/record/readRecord.ts';
import { receiveRecord } from '../../../../core/record/receiveRecord.ts';
import { type VehicleRecord, vehicleRecordSchema } from '../../../../core/record/schema.ts';
import { keptRecord } from '../../../support/keptRecord.ts';
import { anOpinion, nodeSha256, withSigned } from '../../../support/signedChain.ts';

const BEGUN = '2026-11-25T08:00:00+01:00';
const LOOKED = '2026-11-25T08:20:00+01:00';
const blind = (): VehicleRecord => startBlindReading(keptRecord(), BEGUN);

/** Every text of the kept record that tells what its readers and the core came to: the canaries. */
function canaries({ windows, notes, findings, opinions }: VehicleRecord): string[] {
  return [
    ...Object.values(windows).map(({ name }) => name),
    ...Object.values(notes).map(({ text }) => text),
    ...Object.values(findings).map(({ sentence }) => sentence),
    ...Object.values(opinions).flatMap((one) => (one.kind === 'opinion' ? [one.reasons, one.nextTest] : [one.reason])),
  ];
}

async function ownEntry(record: VehicleRecord) {
  const signed = await withSigned(record, [anOpinion('mine', { signedAt: LOOKED, ...readingNow(record) })]);
  const entry = signed.opinions.mine;
  if (entry === undefined) throw new Error('nothing was signed');
  return entry;
}

const NOTE = {
  id: 'own',
  captureId: null,
  startS: null,
  endS: null,
  text: 'my own words',
  author: 'Second reader',
  writtenAt: BEGUN,
  changedAt: null,
};

describe('H1: a blind reading', () => {
  it('shows no word of what the first reader and the core came to, and all that was recorded', () => {
    const shown = shownOf(blind());
    const text = JSON.stringify(shown);
    const words = canaries(keptRecord());
    expect(words.length).toBeGreaterThan(5);
    for (const word of words.filter((one) => one !== '')) expect(text).not.toContain(JSON.stringify(word).slice(1, -1));
    const { captures, readings, identity, troubleCodes, bricks } = keptRecord();
    expect(shown).toMatchObject({ captures, readings, identity, troubleCodes, bricks });
  });

  it('survives a restart: what is saved is blind when it is read again', () => {
    const read = readRecord(JSON.stringify(blind()), 'van.json');
    expect(read.ok && isReadBlind(read.value.record)).toBe(true);
    expect(read.ok && read.value.record).toEqual(blind());
  });

  it('shows what the second reader adds, and neither undo nor redo shows more', () => {
    const begun = startHistory(blind());
    const noted = perform(begun, addNote(NOTE));
    expect(Object.keys(shownOf(noted.record).notes)).toEqual(['own']);
    for (const history of [undo(noted), undo(undo(noted)), redo(undo(noted)), redo(noted)]) {
      expect(isReadBlind(history.record)).toBe(true);
      expect(Object.keys(shownOf(history.record).notes)).not.toContain('n1');
    }
  });

  it('ends with the first look, which is kept with its time, and undo does not take it back', () => {
    const noted = perform(startHistory(blind()), addNote(NOTE));
    const seen = look(noted, LOOKED);
    expect(shownOf(seen.record)).toBe(seen.record);
    expect(undo(seen).record.blindReading?.lookedAt).toBe(LOOKED);
    expect(look(seen, '2026-11-26T08:00:00+01:00')).toBe(seen);
    expect(lookedAt(keptRecord(), LOOKED)).toEqual(keptRecord());
  });

  it('ends with an opinion of its own, which says it was signed before looking', async () => {
    const entry = await ownEntry(blind());
    const { record } = sign(startHistory(blind()), entry);
    expect(entry.kind === 'opinion' && lookingWords(entry)).toBe('blind, signed before looking');
    expect(shownOf(record)).toBe(record);
    expect(Object.keys(record.opinions)).toEqual(['o1', 'o2', 'o3', 'mine']);
    expect(vehicleRecordSchema.safeParse(record).error).toBeUndefined();
  });

  it('goes on when an opinion of somebody else is taken over', async () => {
    const signed = await withSigned(blind(), [anOpinion('theirs')]);
    const entry = signed.opinions.theirs;
    if (entry === undefined) throw new Error('nothing was signed');
    expect(isReadBlind(sign(startHistory(blind()), entry).record)).toBe(true);
  });

  it('makes later opinions say when their reader had looked', async () => {
    const entry = await ownEntry(lookedAt(blind(), LOOKED));
    expect(entry.kind === 'opinion' && lookingWords(entry)).toMatch(/^had seen, looked on .*2026/);
    expect(readingNow({ ...keptRecord(), blindReading: null })).toEqual({});
    expect(lookingWords(anOpinion('plain'))).toBeNull();
  });

  it('is its reader’s own: it does not come along to whoever gets the bundle', () => {
    const receipt = { received: blind(), known: null, newId: 'vehicle-2', instant: LOOKED };
    expect(receiveRecord(receipt).blindReading).toBeNull();
    const known = keptRecord();
    expect(receiveRecord({ ...receipt, known })).toBe(known);
  });
});

describe('T-EV-5: what was signed in version 2', () => {
  const old = readFileSync(join(import.meta.dirname, '../../../fixtures/records/v2.json'), 'utf8');

  // The hashes in the kept file were made with hashlib and json of Python 3, not with the code under test.
  it('keeps its chain through the step to version 3', async () => {
    const read = readRecord(old, 'v2.json');
    if (!read.ok) throw new Error('the kept file opens');
    expect(read.value.record.opinions).toEqual(JSON.parse(old).opinions);
    const links = await checkOpinions(read.value.record, nodeSha256);
    expect(links.map(({ state }) => state)).toEqual(['whole', 'whole', 'whole']);
  });

  it('goes on to say that the record is what its signer was given, also while it is read blind', async () => {
    const { opinions: _, ...rest } = JSON.parse(old);
    // Sorted keys, no blanks: for this file, whose texts and numbers need no special form, that is RFC 8785.
    const sorted = (value: unknown): unknown =>
      value === null || typeof value !== 'object'
        ? value
        : Array.isArray(value)
          ? value.map(sorted)
          : Object.fromEntries(
              Object.entries(value)
                .sort(([a], [b]) => (a < b ? -1 : 1))
                .map(([key, one]) => [key, sorted(one)]),
            );
    const given = await nodeSha256(JSON.stringify(sorted(rest)));
    const entry = { ...anOpinion('v2'), given, previous: null };
    const read = readRecord(JSON.stringify({ ...rest, opinions: { v2: entry } }), 'v2.json');
    if (!read.ok) throw new Error('it opens');
    for (const record of [read.value.record, startBlindReading(read.value.record, BEGUN)]) {
      expect((await checkOpinions(record, nodeSha256))[0]?.sameRecord).toBe(true);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { checkOpinions, nextLink } from '../../../../core/opinions/chain.ts';
import { opinionsOf, withdrawalOf } from '../../../../core/opinions/withdrawn.ts';
import type { Signed } from '../../../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { keptRecord } from '../../../support/keptRecord.ts';
import { anOpinion, nodeSha256, withSigned } from '../../../support/signedChain.ts';

const statesOf = async (record: VehicleRecord) =>
  (await checkOpinions(record, nodeSha256)).map(({ entry, state }) => `${entry.id} ${state}`);

function changed(record: VehicleRecord, id: string, change: (entry: Signed) => Signed): VehicleRecord {
  const entry = record.opinions[id];
  if (entry === undefined) throw new Error(`nothing is signed as ${id}`);
  return { ...record, opinions: { ...record.opinions, [id]: change(entry) } };
}

const without = (record: VehicleRecord, id: string): VehicleRecord => {
  const { [id]: _, ...opinions } = record.opinions;
  return { ...record, opinions };
};

describe('T-EV-5: the chain of what was signed', () => {
  // Its hashes were made with hashlib and json of Python 3 (sorted keys, no blanks), not with the code under test.
  it('of the kept record is whole, in the order of signing', async () => {
    expect(await statesOf(keptRecord())).toEqual(['o1 whole', 'o2 whole', 'o3 whole']);
  });

  it('goes by its links, not by the clocks and not by the order of the file', async () => {
    const one = await withSigned(keptRecord(), [anOpinion('late', { signedAt: '2020-01-01T00:00:00Z' })]);
    const shuffled = { ...one, opinions: Object.fromEntries(Object.entries(one.opinions).reverse()) };
    expect(await statesOf(shuffled)).toEqual(['o1 whole', 'o2 whole', 'o3 whole', 'late whole']);
  });

  it('breaks behind an opinion that was changed, and says where', async () => {
    const edited = changed(keptRecord(), 'o1', (entry) =>
      entry.kind === 'opinion' ? { ...entry, confidence: 84 } : entry,
    );
    expect(await statesOf(edited)).toEqual(['o1 beforeBreak', 'o2 broken', 'o3 broken']);
  });

  it('breaks where one was taken away, also the first', async () => {
    expect(await statesOf(without(keptRecord(), 'o2'))).toEqual(['o1 beforeBreak', 'o3 broken']);
    expect(await statesOf(without(keptRecord(), 'o1'))).toEqual(['o2 broken', 'o3 broken']);
  });

  it('breaks where one was put in between', async () => {
    const record = keptRecord();
    const stranger = changed(await withSigned(without(record, 'o3'), [anOpinion('x')]), 'x', (entry) => entry);
    const both = { ...record, opinions: { ...record.opinions, ...stranger.opinions } };
    expect(await statesOf(both)).toEqual(['o1 whole', 'o2 beforeBreak', 'x broken', 'o3 broken']);
  });

  it('says whether the record still is what the signer was given', async () => {
    const record = keptRecord();
    const now = await withSigned(record, [anOpinion('o4')]);
    const same = async (one: VehicleRecord) =>
      (await checkOpinions(one, nodeSha256)).find(({ entry }) => entry.id === 'o4')?.sameRecord;
    expect(await same(now)).toBe(true);
    expect(await same({ ...now, archived: true })).toBe(false);
  });

  it('goes on behind what is broken, for nothing signed is turned away', async () => {
    const edited = without(keptRecord(), 'o2');
    const links = await checkOpinions(edited, nodeSha256);
    expect((await nextLink(edited, nodeSha256)).previous).toBe(links.at(-1)?.sha256);
  });

  it('begins with nothing', async () => {
    const empty = { ...keptRecord(), opinions: {} };
    expect(await checkOpinions(empty, nodeSha256)).toEqual([]);
    expect((await nextLink(empty, nodeSha256)).previous).toBeNull();
  });
});

describe('withdrawals', () => {
  it('take an opinion back and leave it to be read', () => {
    const entries = Object.values(keptRecord().opinions);
    expect(opinionsOf(entries).map(({ id }) => id)).toEqual(['o1', 'o2']);
    expect(withdrawalOf(entries, 'o1')?.reason).toContain('second reader');
    expect(withdrawalOf(entries, 'o2')).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { continuingOpinions } from '../../../../core/opinions/continuing.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { keptRecord } from '../../../support/keptRecord.ts';
import { anOpinion, nodeSha256, withSigned } from '../../../support/signedChain.ts';

const here = keptRecord();
const idsOf = async (received: VehicleRecord, known: VehicleRecord = here) =>
  (await continuingOpinions(received, known, nodeSha256)).map(({ id }) => id);

describe('what a received record adds to the opinions here', () => {
  it('is what was signed after all that is signed here, whatever else was changed in it', async () => {
    const received = await withSigned({ ...here, archived: true }, [anOpinion('x'), anOpinion('y')]);
    expect(await idsOf(received)).toEqual(['x', 'y']);
    expect(await idsOf(received, { ...here, opinions: {} })).toEqual(['o1', 'o2', 'o3', 'x', 'y']);
  });

  it('is nothing where it says the same, or less', async () => {
    expect(await idsOf(here)).toEqual([]);
    expect(await idsOf(here, await withSigned(here, [anOpinion('mine')]))).toEqual([]);
  });

  it('is nothing where both went on from the same opinion', async () => {
    expect(await idsOf(await withSigned(here, [anOpinion('x')]), await withSigned(here, [anOpinion('mine')]))).toEqual(
      [],
    );
  });

  it('is nothing where an opinion was changed, here or there', async () => {
    const received = await withSigned(here, [anOpinion('x')]);
    const { o1 } = here.opinions;
    if (o1?.kind !== 'opinion') throw new Error('o1 is an opinion');
    const edited = { ...o1, confidence: 12 };
    expect(await idsOf({ ...received, opinions: { ...received.opinions, o1: edited } })).toEqual([]);
    expect(await idsOf(received, { ...here, opinions: { ...here.opinions, o1: edited } })).toEqual([]);
  });
});

import type { Signed } from '../record/opinionSchema.ts';
import type { VehicleRecord } from '../record/schema.ts';
import { checkOpinions, type Sha256 } from './chain.ts';

/**
 * What was signed in a received record after everything that is signed in the known one, in order: entries that can be taken
 * over alone, because they continue the chain here. None where either chain is broken, where the known one holds anything
 * that the received one does not, or where the received one says nothing more.
 */
export async function continuingOpinions(
  received: Pick<VehicleRecord, 'opinions'>,
  known: VehicleRecord,
  sha256: Sha256,
): Promise<Signed[]> {
  const there = await checkOpinions({ ...known, opinions: received.opinions }, sha256);
  const here = await checkOpinions(known, sha256);
  if (![...there, ...here].every(({ state }) => state === 'whole')) return [];
  if (!here.every((link, i) => there[i]?.sha256 === link.sha256)) return [];
  return there.slice(here.length).map(({ entry }) => entry);
}

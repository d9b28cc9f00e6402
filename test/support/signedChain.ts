// Opinions signed one after another, as the program signs them, with the digest of Node.

import { createHash } from 'node:crypto';
import { nextLink, type Sha256 } from '../../core/opinions/chain.ts';
import type { Opinion, Signed, Withdrawal } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';

export const nodeSha256: Sha256 = async (text) => createHash('sha256').update(text, 'utf8').digest('hex');

type Unlinked = Omit<Opinion, 'given' | 'previous'> | Omit<Withdrawal, 'given' | 'previous'>;

/** An opinion that says nothing yet but a finding. */
export function anOpinion(id: string, change: Partial<Opinion> = {}): Omit<Opinion, 'given' | 'previous'> {
  return {
    id,
    kind: 'opinion',
    author: { name: 'First reader', licence: '' },
    signedAt: '2026-11-24T09:00:00+01:00',
    coreVersion: '0.1.0',
    finding: 'weak',
    confidence: 70,
    reasons: 'The rear sensor wanders.',
    nextTest: '',
    answers: null,
    disagreement: null,
    windows: [],
    ...change,
  };
}

/** The record with these signed one after another. */
export async function withSigned(record: VehicleRecord, unlinked: readonly Unlinked[]): Promise<VehicleRecord> {
  let now = record;
  for (const one of unlinked) {
    const entry: Signed = { ...one, ...(await nextLink(now, nodeSha256)) };
    now = { ...now, opinions: { ...now.opinions, [entry.id]: entry } };
  }
  return now;
}

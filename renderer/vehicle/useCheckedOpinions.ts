import { useEffect, useState } from 'react';
import { type CheckedLink, checkOpinions } from '../../core/opinions/chain.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { sha256Of } from '../actions/sha256.ts';

const NOTHING_SIGNED: readonly CheckedLink[] = [];

/** What was signed on the vehicle, in the order of its chain, each checked; null while that is under way. */
export function useCheckedOpinions(record: VehicleRecord): readonly CheckedLink[] | null {
  const [checked, setChecked] = useState<readonly CheckedLink[] | null>(null);
  const none = Object.keys(record.opinions).length === 0;
  useEffect(() => {
    if (none) return undefined;
    let latest = true;
    void checkOpinions(record, sha256Of).then((links) => latest && setChecked(links));
    return () => {
      latest = false;
    };
  }, [record, none]);
  return none ? NOTHING_SIGNED : checked;
}

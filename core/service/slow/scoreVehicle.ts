import type { VehicleEvidence } from '../../findings/vehicleEvidence.ts';
import { answered, notOpen } from '../serviceProblems.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** Everything the core says about a vehicle, from its open captures, readings and codes. */
export const scoreVehicle: SlowAnswer<'scoreVehicle'> = ({ captures: asked, ...rest }, { find, core }) => {
  const captures: VehicleEvidence['captures'][number][] = [];
  for (const { key, ...capture } of asked) {
    const open = find(key);
    if (open === null) return notOpen();
    captures.push({ ...capture, capture: open });
  }
  return answered(core.judgeVehicle({ captures, ...rest }));
};

import type { VehicleEvidence } from '../../findings/vehicleEvidence.ts';
import { answered, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** Everything the core says about a vehicle, from its open captures, readings and codes. */
export const scoreVehicle: Answer<'scoreVehicle'> = ({ captures: asked, ...rest }, { held, core }) => {
  const captures: VehicleEvidence['captures'][number][] = [];
  for (const { key, ...capture } of asked) {
    const open = held.find(key);
    if (open === null) return notOpen();
    captures.push({ ...capture, capture: open.capture });
  }
  return answered(core.judgeVehicle({ captures, ...rest }));
};

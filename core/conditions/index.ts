import { registry } from '../registry.ts';
import { closedLoop } from './closedLoop.ts';
import type { Condition } from './condition.ts';
import { converterHeated } from './converterHeated.ts';
import { engineWarm } from './engineWarm.ts';
import { enoughValues } from './enoughValues.ts';
import { frontEven } from './frontEven.ts';
import { frontQuick } from './frontQuick.ts';
import { frontReaches } from './frontReaches.ts';
import { frontSwitches } from './frontSwitches.ts';
import { loadSteady } from './loadSteady.ts';
import { mixtureBalanced } from './mixtureBalanced.ts';
import { mixtureBehind } from './mixtureBehind.ts';
import { noFrontSensorCode } from './noFrontSensorCode.ts';
import { noLeakSign } from './noLeakSign.ts';
import { noMisfireCode } from './noMisfireCode.ts';
import { noMixtureCode } from './noMixtureCode.ts';
import { noRearSensorCode } from './noRearSensorCode.ts';
import { readinessKnown } from './readinessKnown.ts';
import { rearAlive } from './rearAlive.ts';
import { samplingFast } from './samplingFast.ts';
import { sensorsInPlace } from './sensorsInPlace.ts';
import { speedRaised } from './speedRaised.ts';
import { speedSteady } from './speedSteady.ts';
import { trimsInRange } from './trimsInRange.ts';
import { windowLong } from './windowLong.ts';

/** Every condition, in the order in which people see them: engine, test, sensors, what imitates, codes. */
export const CONDITIONS: readonly Condition[] = registry('condition', (condition) => condition.id, [
  engineWarm,
  converterHeated,
  closedLoop,
  speedRaised,
  speedSteady,
  loadSteady,
  windowLong,
  samplingFast,
  enoughValues,
  frontSwitches,
  frontReaches,
  frontQuick,
  frontEven,
  rearAlive,
  sensorsInPlace,
  noLeakSign,
  mixtureBalanced,
  mixtureBehind,
  trimsInRange,
  noMisfireCode,
  noFrontSensorCode,
  noRearSensorCode,
  noMixtureCode,
  readinessKnown,
]);

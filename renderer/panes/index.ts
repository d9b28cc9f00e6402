// Every kind of pane. A new kind is a file in kinds and a line here.

import type { Role } from '../../core/capture/roles.ts';
import { airFlow } from './kinds/airFlow.ts';
import { calculatedLoad } from './kinds/calculatedLoad.ts';
import { converterTemperature } from './kinds/converterTemperature.ts';
import { coolant } from './kinds/coolant.ts';
import { engineSpeed } from './kinds/engineSpeed.ts';
import { fuelStatus } from './kinds/fuelStatus.ts';
import { fuelTrims } from './kinds/fuelTrims.ts';
import { intakeAir } from './kinds/intakeAir.ts';
import { otherChannel } from './kinds/otherChannel.ts';
import { oxygenSensors } from './kinds/oxygenSensors.ts';
import { throttle } from './kinds/throttle.ts';
import { upstreamLambda } from './kinds/upstreamLambda.ts';
import { vehicleSpeed } from './kinds/vehicleSpeed.ts';
import type { PaneKind } from './paneKind.ts';

/** In the order in which people see them. */
export const PANE_KINDS: readonly PaneKind[] = [
  oxygenSensors,
  upstreamLambda,
  engineSpeed,
  coolant,
  fuelTrims,
  airFlow,
  calculatedLoad,
  vehicleSpeed,
  throttle,
  fuelStatus,
  converterTemperature,
  intakeAir,
  otherChannel,
];

/** The kind that draws channels of this role. */
export function paneKindOf(role: Role): PaneKind {
  return PANE_KINDS.find((kind) => kind.roles.includes(role)) ?? otherChannel;
}

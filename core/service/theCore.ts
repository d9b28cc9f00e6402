import { drawerOf } from '../capture/drawerOf.ts';
import { compareWindows } from '../compare/compareWindows.ts';
import { judgeVehicle } from '../findings/judgeVehicle.ts';
import { modelTraces } from '../findings/modelTraces.ts';
import { scoreWindow } from '../findings/scoreWindow.ts';
import { readCapture } from '../reading/readCapture.ts';
import { suggestWindows } from '../windows/suggestWindows.ts';
import type { CoreFunctions } from './coreFunctions.ts';

/** The core itself, as every host of the service uses it. */
export const THE_CORE: CoreFunctions = {
  readCapture,
  drawerOf,
  suggestWindows,
  // A window that speaks of two banks is scored here by the first; ask again with each bank to see both.
  scoreWindow: (capture, window, troubleCodes) => scoreWindow(capture, window, troubleCodes)[0],
  judgeVehicle,
  modelTraces,
  compareWindows,
};

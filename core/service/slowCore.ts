import { compareWindows } from '../compare/compareWindows.ts';
import { judgeVehicle } from '../findings/judgeVehicle.ts';
import { modelTraces } from '../findings/modelTraces.ts';
import { scoreWindow } from '../findings/scoreWindow.ts';
import { suggestWindows } from '../windows/suggestWindows.ts';
import type { SlowCore } from './coreFunctions.ts';

/** What judges captures, as every host of the service uses it. */
export const SLOW_CORE: SlowCore = {
  suggestWindows,
  // A window that speaks of two banks is scored here by the first; ask again with each bank to see both.
  scoreWindow: (capture, window, troubleCodes) => scoreWindow(capture, window, troubleCodes)[0],
  judgeVehicle,
  modelTraces,
  compareWindows,
};

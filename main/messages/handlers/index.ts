import type { Handlers } from '../receive.ts';
import { bundleHandlers } from './bundles.ts';
import { captureHandlers } from './captures.ts';
import { exportHandlers } from './exports.ts';
import { programHandlers } from './program.ts';
import { settingsHandlers } from './settings.ts';
import type { ShellTools } from './tools.ts';
import { vehicleHandlers } from './vehicles.ts';

/** Every message with its handler: one file a group, one line here. */
export function allHandlers(tools: ShellTools): Handlers {
  return {
    ...captureHandlers(tools),
    ...vehicleHandlers(tools),
    ...settingsHandlers(tools),
    ...exportHandlers(tools),
    ...bundleHandlers(tools),
    ...programHandlers(tools),
  };
}

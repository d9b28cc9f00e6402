import type { WebContents } from 'electron';
import type { z } from 'zod';
import { SHELL_EVENTS, type ShellEventName, type ShellEvents } from '../../core/bridge/shellMessages.ts';
import { channelOf } from './preloadRequests.ts';

/** Tells a window of an event. A window that is gone is told nothing. */
export function tell<Name extends ShellEventName>(
  contents: WebContents,
  name: Name,
  payload: z.input<ShellEvents[Name]>,
): void {
  if (contents.isDestroyed()) return;
  contents.send(channelOf(name), SHELL_EVENTS[name].parse(payload));
}

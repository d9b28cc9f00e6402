import { isOurAddress } from '../safety/windowAddress.ts';

/** What of an Electron frame the check looks at. */
export interface SenderFrame {
  readonly url: string;
  /** Null for a page's main frame. */
  readonly parent: unknown;
}

export interface SenderEvent {
  /** Null where the frame is gone. */
  readonly senderFrame: SenderFrame | null;
  readonly sender: unknown;
}

/** Whether a message comes from the main frame of one of our windows, showing one of our pages. */
export function isOurSender(event: SenderEvent, isOurContents: (sender: unknown) => boolean): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && isOurAddress(frame.url) && isOurContents(event.sender);
}

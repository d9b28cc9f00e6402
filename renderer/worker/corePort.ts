import { CORE_PORT_MESSAGE } from '../../core/bridge/shellMessages.ts';

/** Calls back with each port to the core's process that the preload hands over: one at the start, one after a loss. */
export function onCorePort(page: Window, take: (port: MessagePort) => void): () => void {
  const hear = (event: MessageEvent): void => {
    // Only the page itself (its preload) may hand over a port; a frame inside it may not.
    if (event.source !== page || event.data !== CORE_PORT_MESSAGE) return;
    const port = event.ports[0];
    if (port !== undefined) take(port);
  };
  page.addEventListener('message', hear);
  return () => page.removeEventListener('message', hear);
}

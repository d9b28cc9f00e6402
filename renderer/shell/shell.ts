import type { ShellBridge } from '../../core/bridge/shellMessages.ts';

declare global {
  interface Window {
    /** Put there by the preload; the only door to the outside. */
    readonly shell: ShellBridge;
  }
}

/** What the shell said it can do. Throws at once where the preload did not run: nothing would work without it. */
export function shellOf(page: Window): ShellBridge {
  if (page.shell === undefined) throw new Error('The preload did not offer a shell to this page.');
  return page.shell;
}

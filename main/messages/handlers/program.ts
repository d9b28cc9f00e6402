import { app } from 'electron';
import { readLicences, runtimeOf } from '../../program/runtime.ts';
import type { Handlers } from '../receive.ts';
import type { ShellTools } from './tools.ts';

type Names = 'setTitle' | 'setCommandStates' | 'toggleFullScreen' | 'about' | 'readyToClose' | 'settled' | 'wantCore';

/** The window's frame, and what window and shell tell each other about the run of the program. */
export function programHandlers(tools: ShellTools): Pick<Handlers, Names> {
  return {
    setTitle({ title, unsaved }) {
      const window = tools.window();
      window?.setTitle(unsaved && process.platform !== 'darwin' ? `• ${title}` : title);
      if (process.platform === 'darwin') window?.setDocumentEdited(unsaved);
      return null;
    },
    setCommandStates(states) {
      tools.menu.showStates(states);
      return null;
    },
    toggleFullScreen() {
      const window = tools.window();
      window?.setFullScreen(!window.isFullScreen());
      return null;
    },
    async about() {
      const runtime = runtimeOf(process.versions);
      return {
        version: app.getVersion(),
        runtime: runtime.words,
        fallbackRuntime: runtime.fallback,
        licences: await readLicences(tools.folders.main),
      };
    },
    readyToClose() {
      tools.readyToClose();
      return null;
    },
    settled() {
      tools.settled();
      return null;
    },
    wantCore({ contextIsolated, sandboxed }) {
      // A page without its walls gets nothing to read captures with.
      if (!contextIsolated || !sandboxed) throw new Error('The preload runs without isolation or without sandbox.');
      tools.connectCore();
      return null;
    },
  };
}

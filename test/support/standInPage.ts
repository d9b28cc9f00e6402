// Runs before the window's own script: puts the stand-in where the preload would put the real shell, and hands over a
// port to the core once the window listens.

import { CORE_PORT_MESSAGE } from '../../core/bridge/shellMessages.ts';
import { startStandInCore } from './standInCore.ts';
import { createStandIn, type StandIn, type StandInFile } from './standInShell.ts';

declare global {
  interface Window {
    standIn: StandIn;
    /** Names and words of the sample drives, written into the page by whoever serves it. */
    standInSamples: readonly { readonly name: string; readonly words: string; readonly bytes: number }[];
  }
}

const samples = window.standInSamples.map(({ name, words, bytes }): StandInFile => {
  return {
    picked: { token: `sample-${name}`, name, bytes, sample: true },
    words,
    bytes: async () => new Uint8Array(await (await fetch(`drives/${name}`)).arrayBuffer()),
  };
});

const PLACE = 'tailtrace-stand-in';

window.standIn = createStandIn(samples, {
  load: () => localStorage.getItem(PLACE),
  keep: (text) => localStorage.setItem(PLACE, text),
});
Object.defineProperty(window, 'shell', { value: window.standIn.shell });

window.addEventListener('load', () => {
  const port = startStandInCore(async (token) => {
    const file = window.standIn.fileOf(token);
    return file === null ? null : { name: file.picked.name, bytes: await file.bytes() };
  });
  window.postMessage(CORE_PORT_MESSAGE, '*', [port]);
});

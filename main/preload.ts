// The bridge between page and shell, made from the list of messages in a loop. The page gets named functions and one
// string; it never sees Electron's own objects, an event, or where a file lies.

import { contextBridge, ipcRenderer, webFrame, webUtils } from 'electron';
import { CORE_PORT_MESSAGE, SHELL_EVENTS, SHELL_REQUESTS } from '../core/bridge/shellMessages.ts';
import { type Answered, channelOf, PORT_CHANNEL } from './messages/preloadRequests.ts';

/** The little of a page that is used here; the shell's sources know no page otherwise. */
declare const window: {
  readonly location: { readonly origin: string };
  postMessage(message: unknown, origin: string, ports: readonly unknown[]): void;
  addEventListener(name: 'load', hear: () => void): void;
};
type PageFile = Parameters<typeof webUtils.getPathForFile>[0];
declare const File: abstract new () => PageFile & { readonly path?: unknown };

async function ask(name: string, question: unknown): Promise<unknown> {
  const answered: Answered = await ipcRenderer.invoke(channelOf(name), question);
  if (answered.ok) return answered.reply;
  throw new Error(answered.refusal.words);
}

/** Events that came before anybody listened: files given on the command line come before the page has drawn itself. */
const missed = new Map<string, unknown[]>();
const listeners = new Map<string, Set<(payload: unknown) => void>>();

for (const event of Object.keys(SHELL_EVENTS)) {
  missed.set(event, []);
  listeners.set(event, new Set());
  ipcRenderer.on(channelOf(event), (_event, payload: unknown) => {
    const hearing = listeners.get(event);
    if (hearing?.size) for (const hear of hearing) hear(payload);
    else missed.get(event)?.push(payload);
  });
}

function on(event: unknown, hear: (payload: unknown) => void): () => void {
  const hearing = listeners.get(String(event));
  if (hearing === undefined || typeof hear !== 'function') throw new Error('There is no such event.');
  hearing.add(hear);
  for (const payload of missed.get(String(event))?.splice(0) ?? []) hear(payload);
  return () => void hearing.delete(hear);
}

/** Where a file lies, or '' for anything that is no file of a disk. Runtimes before 29 tell it by a property. */
function pathOf(file: unknown): string {
  if (!(file instanceof File)) return ''; // an object that a page made up may say anything
  if (webUtils !== undefined) return webUtils.getPathForFile(file);
  return typeof file.path === 'string' ? file.path : '';
}

// Those runtimes tell the page, too, where a dropped file lies. The page has no use for it.
if (webUtils === undefined) void webFrame.executeJavaScript('delete File.prototype.path');

const requests = Object.fromEntries(
  Object.keys(SHELL_REQUESTS).map((name) => [name, (question: unknown) => ask(name, question)]),
);

const walls = { contextIsolated: process.contextIsolated, sandboxed: process.sandboxed };

contextBridge.exposeInMainWorld('shell', {
  ...requests,
  takeFiles: (files: unknown) => ask('takePaths', Array.isArray(files) ? files.map(pathOf) : []),
  on,
  platform: process.platform,
  isolation: [walls.contextIsolated ? 'isolated' : 'open', walls.sandboxed ? 'sandboxed' : 'unbounded'].join(', '),
});

ipcRenderer.on(PORT_CHANNEL, (event) => {
  window.postMessage(CORE_PORT_MESSAGE, window.location.origin, event.ports);
});
window.addEventListener('load', () => void ask('wantCore', walls));

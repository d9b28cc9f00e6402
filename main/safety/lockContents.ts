import type { App, WebContents } from 'electron';
import { START_PAGE } from './windowAddress.ts';

/**
 * Nothing that ever shows a page in this program may leave it, open another, or hold one inside: not by a link, a script,
 * a redirect, a dropped file, or a webview.
 */
export function lockContents(app: App): void {
  app.on('web-contents-created', (_event, contents) => lock(contents));
}

function lock(contents: WebContents): void {
  contents.on('will-navigate', (event) => {
    if (event.url !== START_PAGE) event.preventDefault(); // the page may load itself again
  });
  contents.on('will-frame-navigate', (event) => {
    if (event.url !== START_PAGE || !event.isMainFrame) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

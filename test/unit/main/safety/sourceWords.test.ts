// What a shipped file must not contain, whatever it is for: read from the sources themselves.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sourceFiles } from '../../../architecture/sourceTree.ts';

/** Sources of what is shipped; the set-up stays behind. */
const SHIPPED = sourceFiles().filter((path) => /^(core|main|renderer)\//.test(path) && !path.startsWith('main/setup/'));

/** Every "path:line" of a shipped source that the pattern finds. */
function placesOf(pattern: RegExp, files: readonly string[] = SHIPPED): string[] {
  return files.flatMap((path) =>
    readFileSync(path, 'utf8')
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${path}:${i + 1}`] : [])),
  );
}

const filesOf = (places: readonly string[]) => [...new Set(places.map((place) => place.replace(/:\d+$/, '')))];

describe('the shipped sources', () => {
  it('are there to be read', () => {
    expect(SHIPPED.length).toBeGreaterThan(200);
    expect(placesOf(/registerPrivateScheme\(\)/).length).toBeGreaterThan(0);
  });

  it.each([
    ['T-EL-4', 'the sandbox is not switched off', /--no-sandbox|sandbox: false|disableSandbox/],
    ['T-EL-2', 'no page gets Node', /nodeIntegration\w*: true/],
    ['T-EL-3', 'no page loses its isolation', /contextIsolation: false/],
    ['T-EL-6', 'the web’s own rules stand', /webSecurity/],
    ['T-EL-8', 'nothing insecure is let in', /allowRunningInsecureContent/],
    ['T-EL-9', 'no experiments', /experimentalFeatures/],
    ['T-EL-10', 'no switches of the engine', /enableBlinkFeatures|enable-blink-features|appendSwitch/],
    ['T-EL-11', 'no webview', /<webview|webviewTag: true/],
    ['T-EL-15', 'nothing is opened in another program', /openExternal|openPath\(/],
    ['T-EL-18', 'no page from a file', /loadFile\(|file:\/\/\//],
    [
      'T-EL-22',
      'no updates, reports or counts',
      /autoUpdater|crashReporter|\bfetch\(|XMLHttpRequest|sendBeacon|EventSource/,
    ],
  ])('%s: %s', (_id, _words, pattern) => {
    expect(placesOf(pattern)).toEqual([]);
  });

  it('T-EL-17: messages come in at one place', () => {
    expect(filesOf(placesOf(/ipcMain/))).toEqual(['main/messages/receive.ts', 'main/program/reviewProgram.ts']);
    expect(placesOf(/ipcMain\s*\./)).toEqual([]);
    expect(filesOf(placesOf(/ipcRenderer/))).toEqual(['main/preload.ts']);
  });

  it('the shell starts no program; the headless command, which is plain Node, alone may', () => {
    expect(filesOf(placesOf(/child_process/)).filter((path) => !path.startsWith('main/command/'))).toEqual([]);
  });

  it('T-EL-20: the page gets one object', () => {
    expect(placesOf(/exposeInMainWorld/)).toHaveLength(1);
  });
});

// The promises T-EL-1 to T-EL-21 of a locked page, in the real program. What needs no window (forged senders, hostile
// addresses, the exact policy) is in test/unit/main.

import { copyFileSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHELL_REQUESTS } from '../../core/bridge/shellMessages.ts';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, type Program } from '../support/launchProgram.ts';

const START_PAGE = 'tailtrace://app/index.html';
const DRIVE = 'assets/drives/van-before.csv';

let program: Program;
let work = '';
let capture = '';

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-safety-'));
  capture = join(work, 'van.csv');
  copyFileSync(DRIVE, capture);
  program = await launchProgram({ args: [capture] });
  await program.settled();
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
});

/** Preferences of every page there is. */
function preferences(): Promise<Record<string, unknown>[]> {
  return program.app.evaluate(({ webContents }) =>
    // Left out of the runtime's types, and there all the same.
    webContents
      .getAllWebContents()
      .map((contents) => ({ ...Reflect.apply(Reflect.get(contents, 'getLastWebPreferences'), contents, []) })),
  );
}

const windowCount = () => program.app.evaluate(({ webContents }) => webContents.getAllWebContents().length);

describe('T-EL-1: nothing is loaded but the program’s own files', () => {
  it('in a whole start every request goes to the private scheme, or to what the page made itself', async () => {
    await program.app.evaluate(({ session }) => {
      const seen: string[] = [];
      Reflect.set(globalThis, 'seenAddresses', seen);
      session.defaultSession.webRequest.onBeforeRequest(({ url }, answer) => {
        seen.push(url);
        answer({});
      });
    });
    await program.page.reload();
    await program.settled();
    const seen: string[] = await program.app.evaluate(() => Reflect.get(globalThis, 'seenAddresses'));
    expect(seen).toContain(START_PAGE);
    expect(seen.filter((url) => !/^(tailtrace:\/\/app\/|data:|blob:)/.test(url))).toEqual([]);
  });
});

describe('T-EL-2 to 4, 6, 8 to 11: how pages are set up', () => {
  it('no Node, isolated, sandboxed, and every default left alone', async () => {
    const all = await preferences();
    expect(all.length).toBeGreaterThan(0);
    for (const one of all) {
      expect(one).toMatchObject({
        nodeIntegration: false,
        nodeIntegrationInSubFrames: false,
        contextIsolation: true,
        sandbox: true,
        webSecurity: true,
        allowRunningInsecureContent: false,
        experimentalFeatures: false,
        webviewTag: false,
      });
      // Left out by some runtimes where they are off.
      expect(one.nodeIntegrationInWorker ?? false).toBe(false);
      expect(one.navigateOnDragDrop ?? false).toBe(false);
      expect(one.enableBlinkFeatures ?? '').toBe('');
    }
  });

  it('the page sees neither require nor process, and the preload reports both walls', async () => {
    const seen = await program.page.evaluate(() => [
      typeof Reflect.get(globalThis, 'require'),
      typeof Reflect.get(globalThis, 'process'),
      window.shell.isolation,
    ]);
    expect(seen).toEqual(['undefined', 'undefined', 'isolated, sandboxed']);
  });
});

describe('T-EL-5: permissions', () => {
  it('none is granted, and none is said to be', async () => {
    const answers = await program.page.evaluate(async () => {
      const names = ['geolocation', 'notifications', 'camera', 'microphone', 'midi', 'clipboard-read'];
      const states = names.map((name) =>
        navigator.permissions.query({ name: name as PermissionName }).then(({ state }) => state),
      );
      return [await Notification.requestPermission(), ...(await Promise.all(states))];
    });
    expect(new Set(answers)).toEqual(new Set(['denied']));
  });

  it('a screen is not given out', async () => {
    const outcome = await program.page.evaluate(() =>
      navigator.mediaDevices.getDisplayMedia({ video: true }).then(
        () => 'given',
        () => 'refused',
      ),
    );
    expect(outcome).toBe('refused');
  });
});

describe('T-EL-7: the content policy bites', () => {
  it('no inline script, no picture, no request from elsewhere, no worker', async () => {
    const refused = ['script-src-elem', 'img-src', 'connect-src', 'worker-src'];
    const ran = await program.page.evaluate(async (expected) => {
      const waiting = new Set(expected);
      const allRefused = new Promise<void>((resolve) => {
        document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
          waiting.delete(effectiveDirective);
          if (waiting.size === 0) resolve();
        });
      });
      const script = document.createElement('script');
      script.textContent = 'window.inlineRan = true';
      const picture = new Image();
      picture.src = 'https://example.invalid/a.png';
      document.body.append(script, picture);
      await Promise.allSettled([fetch('https://example.invalid/'), fetch('main.js')]);
      try {
        new Worker('main.js');
      } catch {
        // newer engines throw besides
      }
      await allRefused;
      script.remove();
      picture.remove();
      return Reflect.has(window, 'inlineRan');
    }, refused);
    expect(ran).toBe(false);
  });

  it('no code from text: a string timer does not run', async () => {
    const ran = await program.page.evaluate(async () => {
      Reflect.apply(setTimeout, window, ['window.timerRan = true', 0]);
      await new Promise((resolve) => setTimeout(resolve, 0));
      await new Promise((resolve) => requestAnimationFrame(resolve));
      return Reflect.has(window, 'timerRan');
    });
    expect(ran).toBe(false);
  });
});

describe('T-EL-12 to 14: the page cannot leave, open or hold another', () => {
  it.each([
    ['a script', () => location.assign('https://example.invalid/')],
    ['a file address', () => location.assign('file:///etc/passwd')],
    ['another name of ours', () => location.assign('tailtrace://app/main.js')],
    [
      'a form',
      () => {
        const form = document.createElement('form');
        form.action = 'https://example.invalid/';
        document.body.append(form);
        form.submit();
        form.remove();
      },
    ],
    [
      'a link',
      () => {
        const link = document.createElement('a');
        link.href = 'https://example.invalid/';
        document.body.append(link);
        link.click();
        link.remove();
      },
    ],
  ])('by %s', async (_words, leave) => {
    await program.page.evaluate(leave);
    // A request that goes through the shell and back comes after anything the navigation could have begun.
    await program.page.evaluate(() => window.shell.about(null));
    expect(program.page.url()).toBe(START_PAGE);
  });

  it('window.open, a blank target and a middle click open nothing', async () => {
    const before = await windowCount();
    const opened = await program.page.evaluate(() => {
      const link = document.createElement('a');
      link.href = 'https://example.invalid/';
      link.target = '_blank';
      document.body.append(link);
      link.click();
      link.dispatchEvent(new MouseEvent('auxclick', { button: 1, bubbles: true }));
      link.remove();
      return window.open('https://example.invalid/') !== null;
    });
    expect(opened).toBe(false);
    expect(await windowCount()).toBe(before);
  });

  it('a webview is no more than an unknown element', async () => {
    const before = await windowCount();
    await program.page.evaluate(() => {
      const view = document.createElement('webview');
      view.setAttribute('src', 'https://example.invalid/');
      document.body.append(view);
      view.remove();
    });
    expect(await windowCount()).toBe(before);
  });

  it('a dropped link leads nowhere', async () => {
    await program.page.evaluate(() => {
      const carried = new DataTransfer();
      carried.setData('text/uri-list', 'https://example.invalid/');
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
    });
    await program.page.evaluate(() => window.shell.about(null));
    expect(program.page.url()).toBe(START_PAGE);
  });

  it('a frame inside the page has no bridge', async () => {
    const inside = await program.page.evaluate(() => {
      const frame = document.createElement('iframe');
      document.body.append(frame);
      const seen = frame.contentWindow === null ? 'none' : typeof Reflect.get(frame.contentWindow, 'shell');
      frame.remove();
      return seen;
    });
    expect(inside).toBe('undefined');
  });
});

describe('T-EL-20: the bridge', () => {
  it('offers the listed functions and two plain strings, and nothing else', async () => {
    const kinds = await program.page.evaluate(() =>
      Object.fromEntries(Object.entries(window.shell).map(([name, value]) => [name, typeof value])),
    );
    const functions = [...Object.keys(SHELL_REQUESTS), 'takeFiles', 'on'];
    const expected = functions.map((name) => [name, 'function']);
    expect(kinds).toEqual(Object.fromEntries([...expected, ['platform', 'string'], ['isolation', 'string']]));
  });

  it('cannot be changed by the page, and its events bring their payload alone', async () => {
    const seen = await program.page.evaluate(() => {
      try {
        Reflect.set(window.shell, 'about', () => 'forged');
      } catch {
        // refusing aloud is as good
      }
      const stop = window.shell.on('coreLost', () => undefined);
      return [typeof stop, stop(), String(window.shell.about).includes('native code')];
    });
    expect(seen).toEqual(['function', undefined, true]);
  });

  it('an event that is not in the list cannot be heard', async () => {
    const outcome = await program.page.evaluate(() => {
      try {
        Reflect.apply(window.shell.on, null, ['corePort', () => undefined]);
        return 'heard';
      } catch {
        return 'refused';
      }
    });
    expect(outcome).toBe('refused');
  });
});

describe('T-EL-21: tokens, never paths', () => {
  it('1 000 strings that nobody gave out, paths of real files among them, open nothing', async () => {
    const made = fc.sample(
      fc.oneof(fc.string({ maxLength: 128 }), fc.base64String({ minLength: 32, maxLength: 32 })),
      990,
    );
    const tokens = [
      capture,
      '/etc/passwd',
      'file:///etc/passwd',
      '',
      '..',
      '../../',
      '/proc/self/environ',
      '/dev/zero',
      DRIVE,
      '\u0000',
      ...made,
    ];
    await program.page.addInitScript(() => {
      window.addEventListener('message', ({ data, ports }) => {
        if (data === 'tailtrace:core-port') Reflect.set(window, 'portUnderTest', ports[0]);
      });
    });
    await program.page.reload();
    await program.settled();
    const refusals = await program.page.evaluate(async (asked) => {
      const port: MessagePort = Reflect.get(window, 'portUnderTest');
      const open = (token: string, i: number) =>
        new Promise<string>((resolve) => {
          port.addEventListener('message', ({ data }) => {
            if (data.id === -1 - i && data.type !== 'progress') resolve(data.problem?.id ?? 'opened');
          });
          port.postMessage({ type: 'ask', id: -1 - i, name: 'open', ask: { token, choice: null } });
        });
      return Promise.all(asked.map(open));
    }, tokens);
    expect(refusals).toHaveLength(1000);
    expect(new Set(refusals)).toEqual(new Set(['notPicked']));
  });

  it('an object or a made-up file that claims to lie somewhere gets no token', async () => {
    const taken = await program.page.evaluate(() => {
      const forged = new File(['x'], 'x.csv');
      Object.defineProperty(forged, 'path', { value: '/etc/passwd' });
      return window.shell.takeFiles([{ path: '/etc/passwd', name: 'passwd' }, forged, '/etc/passwd', null]);
    });
    expect(taken.map(({ ok }) => ok)).toEqual([false, false, false, false]);
  });

  it('a picked file gives a token and its name; the page sees no path of it', async () => {
    const input = await program.page.evaluateHandle(() => {
      const field = document.createElement('input');
      field.type = 'file';
      document.body.append(field);
      return field;
    });
    await input.setInputFiles(capture);
    const { taken, paths } = await input.evaluate(async (field) => {
      const files = [...(field.files ?? [])];
      field.remove();
      return { taken: await window.shell.takeFiles(files), paths: files.map((file) => Reflect.get(file, 'path')) };
    });
    expect(taken).toMatchObject([
      { ok: true, picked: { name: 'van.csv', bytes: statSync(capture).size, sample: false } },
    ]);
    expect(JSON.stringify(taken)).not.toContain(work);
    expect(paths).toEqual([undefined]);
  });
});

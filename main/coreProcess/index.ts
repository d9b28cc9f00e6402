// The process that reads captures, holds them, and runs the core on them: a child of the shell, without a window. It asks
// the shell which file a token stands for, and talks to the window over a port of its own.

import { join } from 'node:path';
import type { MessagePortMain } from 'electron';
import type { Outcome } from '../../core/reading/problem.ts';
import type { CoreHost, HeldBytes } from '../../core/service/coreHost.ts';
import { startCoreService } from '../../core/service/coreService.ts';
import { QUICK_CORE } from '../../core/service/quickCore.ts';
import { captureMemory } from '../captures/freeMemory.ts';
import { faultWords } from './faultWords.ts';
import { fileBytes } from './fileBytes.ts';
import { noHasher } from './hasher.ts';
import { hasherFor } from './hasherFor.ts';
import { type ToShell, toProcessSchema } from './processMessages.ts';
import { threadSlowAnswers } from './threadSlowAnswers.ts';

type GrantedFile = { readonly path: string; readonly name: string };

const shell = process.parentPort;
const tellShell = (message: ToShell): void => shell.postMessage(message);

const waiting = new Map<number, (file: GrantedFile | null) => void>();
let questions = 0;

/** Asks the shell which file it gave this token for; null where it gave none. */
function whichFile(token: string): Promise<GrantedFile | null> {
  const id = ++questions;
  return new Promise((resolve) => {
    waiting.set(id, resolve);
    tellShell({ type: 'whichFile', id, token });
  });
}

const hasherOf = hasherFor(join(__dirname, 'hashThread.cjs'));

const host: CoreHost = {
  async openBytes(token, wanted): Promise<Outcome<HeldBytes>> {
    const file = await whichFile(token);
    if (file !== null) return fileBytes(file.path, file.name, wanted === 'whole' ? hasherOf : noHasher);
    return {
      ok: false,
      problem: {
        id: 'notPicked',
        what: 'This file has not been picked in this run of the program.',
        where: 'the capture',
        doNext: 'Pick it again.',
      },
    };
  },
  nowMs: () => performance.now(),
  captureMemory,
  pause: () =>
    new Promise((resolve) => {
      setImmediate(resolve);
    }),
  tellFault: (fault) => process.stderr.write(faultWords(fault)),
};

function serve(port: MessagePortMain): void {
  const slow = threadSlowAnswers(join(__dirname, 'slowThread.cjs'));
  const service = startCoreService({ host, core: QUICK_CORE, slow, post: (message) => port.postMessage(message) });
  port.on('message', (event) => service.hear(event.data));
  port.on('close', () => {
    service.end();
    slow.end();
  });
  port.start();
}

shell.on('message', ({ data, ports }) => {
  const message = toProcessSchema.parse(data);
  if (message.type === 'file') {
    waiting.get(message.id)?.(message.file);
    waiting.delete(message.id);
    return;
  }
  const [port] = ports;
  if (port !== undefined) serve(port);
});

tellShell({ type: 'ready' });

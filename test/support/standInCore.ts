// The core's service in the page itself, for trying the window in an ordinary browser without the shell.

import type { Outcome } from '../../core/reading/problem.ts';
import type { CoreHost, HeldBytes } from '../../core/service/coreHost.ts';
import { startCoreService } from '../../core/service/coreService.ts';
import { QUICK_CORE } from '../../core/service/quickCore.ts';
import { slowAnswersHere } from '../../core/service/slowAnswers.ts';
import { SLOW_CORE } from '../../core/service/slowCore.ts';

/** The whole bytes behind a token, or null where there are none. */
export type BytesOf = (token: string) => Promise<{ readonly name: string; readonly bytes: Uint8Array } | null>;

/** Bytes handed over at once; small enough that a long file shows progress. */
const CHUNK = 1 << 18;

/** Starts a service and returns the window's end of its port. */
export function startStandInCore(bytesOf: BytesOf): MessagePort {
  const { port1, port2 } = new MessageChannel();
  const service = startCoreService({
    host: hostOf(bytesOf),
    core: QUICK_CORE,
    slow: slowAnswersHere(SLOW_CORE, (fault) => reportError(fault)),
    post: (message) => port1.postMessage(message),
  });
  port1.onmessage = (event) => service.hear(event.data);
  return port2;
}

export function hostOf(bytesOf: BytesOf): CoreHost {
  return {
    openBytes: async (token): Promise<Outcome<HeldBytes>> => {
      const found = await bytesOf(token);
      return found === null ? notThere() : { ok: true, value: heldBytes(found.name, found.bytes) };
    },
    nowMs: () => performance.now(),
    captureMemory: () => Promise.resolve(Number.POSITIVE_INFINITY),
    pause: () =>
      new Promise((resolve) => {
        setTimeout(resolve, 0);
      }),
    tellFault: (fault) => reportError(fault),
  };
}

function heldBytes(name: string, bytes: Uint8Array): HeldBytes {
  return {
    source: {
      name,
      bytes: bytes.length,
      rereadable: true,
      async *chunks() {
        for (let at = 0; at < bytes.length; at += CHUNK) yield bytes.subarray(at, at + CHUNK);
      },
    },
    finish: async () => ({ ok: true, value: { sha256: await sha256Of(bytes) } }),
    close: async () => undefined,
  };
}

function notThere(): Outcome<HeldBytes> {
  const problem = {
    id: 'vanished',
    what: 'The file is no longer there.',
    where: 'The picked file',
    doNext: 'Put it back, or open it from where it is now.',
  };
  return { ok: false, problem };
}

export async function sha256Of(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new Uint8Array(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

// npm run bench -- opening: what is left of captures that were closed, and how soon a cancelled one stops. One hour at
// 1 kHz goes through the service of the core's own process, with the file, the hash and the pauses of the real program.

import { resolve } from 'node:path';
import { stdout } from 'node:process';
import { setImmediate as turn } from 'node:timers/promises';
import type { FromCore } from '../../core/bridge/coreMessages.ts';
import type { CoreHost } from '../../core/service/coreHost.ts';
import { type CoreService, startCoreService } from '../../core/service/coreService.ts';
import { QUICK_CORE } from '../../core/service/quickCore.ts';
import { slowAnswersHere } from '../../core/service/slowAnswers.ts';
import { SLOW_CORE } from '../../core/service/slowCore.ts';
import { fileBytes } from '../../main/coreProcess/fileBytes.ts';
import { HOUR_CAPTURE, writeLargeCapture } from './largeCaptures.ts';

const ROUNDS = 10;
const CANCELS = 20;

const path = resolve(writeLargeCapture(HOUR_CAPTURE).path);
let closed = 0;
const host: CoreHost = {
  async openBytes() {
    const opened = await fileBytes(path, 'hour.csv');
    if (!opened.ok) return opened;
    const { close } = opened.value;
    return {
      ok: true,
      value: {
        ...opened.value,
        async close() {
          await close();
          closed++;
        },
      },
    };
  },
  nowMs: () => performance.now(),
  captureMemory: () => Promise.resolve(Number.POSITIVE_INFINITY),
  pause: () => turn(),
  tellFault: (fault) => {
    throw fault;
  },
};

const answers = new Map<number, (message: FromCore) => void>();
const service: CoreService = startCoreService({
  host,
  core: QUICK_CORE,
  slow: slowAnswersHere(SLOW_CORE, host.tellFault),
  post: (message) => {
    if (!('id' in message) || message.type === 'progress') return;
    answers.get(message.id)?.(message);
    answers.delete(message.id);
  },
});
let asked = 0;

function ask(name: string, question: unknown): { readonly id: number; readonly answer: Promise<FromCore> } {
  const id = ++asked;
  const answer = new Promise<FromCore>((done) => answers.set(id, done));
  service.hear({ type: 'ask', id, name, ask: question });
  return { id, answer };
}

async function megabytes(): Promise<number> {
  for (let k = 0; k < 5; k++) {
    globalThis.gc?.();
    await turn();
  }
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 1e6;
}

async function openAndClose(): Promise<number> {
  const opened = await ask('open', { token: 'hour', choice: null }).answer;
  const summary = Object(Object(opened).reply).summary;
  const key = String(summary.key);
  await ask('suggest', { key }).answer;
  await ask('views', { key, channelIds: [String(summary.channels[0].id)], startS: 0, endS: 3600, buckets: 1000 })
    .answer;
  const full = await megabytes();
  await ask('close', { key }).answer;
  return full;
}

/** Milliseconds from a cancel in the middle of reading until the file is let go. */
async function cancelled(afterTurns: number): Promise<number> {
  const before = closed;
  const { id, answer } = ask('open', { token: 'hour', choice: null });
  for (let k = 0; k < afterTurns; k++) await turn();
  const began = performance.now();
  service.hear({ type: 'cancel', id });
  await answer;
  while (closed === before) await turn();
  return performance.now() - began;
}

await openAndClose(); // the compiler's own memory, once
const start = await megabytes();
const left: number[] = [];
let full = 0;
for (let round = 0; round < ROUNDS; round++) {
  full = Math.max(full, await openAndClose());
  left.push(await megabytes());
}
say(`${HOUR_CAPTURE.words}: ${HOUR_CAPTURE.rows} rows, opened, suggested from, drawn and closed ${ROUNDS} times`);
say(`  memory before ${start.toFixed(1)} MB, with the capture open ${full.toFixed(1)} MB`);
say(`  after each closing: ${left.map((one) => one.toFixed(1)).join(' ')} MB`);
say(`  last over before: ${((left[left.length - 1] ?? 0) / start).toFixed(2)} (within 0.90 to 1.10)`);

const times: number[] = [];
for (let k = 0; k < CANCELS; k++) times.push(await cancelled(3 + 9 * k));
times.sort((a, b) => a - b);
const after = await megabytes();
say(
  `cancelled ${CANCELS} times, early and late: let go after ${(times[CANCELS >> 1] ?? 0).toFixed(0)} ms in the median,`,
);
say(`  ${(times[CANCELS - 1] ?? 0).toFixed(0)} ms at most (200 ms promised); memory then ${after.toFixed(1)} MB`);
process.exit(0);

function say(line: string): void {
  stdout.write(`${line}\n`);
}

// The whole window without its drawing, on the stand-in shell and the real core: for tests of what the window does.

import { readFile } from 'node:fs/promises';
import type { FromCore } from '../../core/bridge/coreMessages.ts';
import type { Picked } from '../../core/bridge/shellMessages.ts';
import { looksLikeBundle } from '../../core/evidence/bundle/looksLikeBundle.ts';
import { startCoreService } from '../../core/service/coreService.ts';
import { QUICK_CORE } from '../../core/service/quickCore.ts';
import { slowAnswersHere } from '../../core/service/slowAnswers.ts';
import { SLOW_CORE } from '../../core/service/slowCore.ts';
import { SAMPLE_DRIVES } from '../../core/simulation/sampleDrives/index.ts';
import { tracesSettled } from '../../renderer/plot/settled.ts';
import { createProgram, type Program } from '../../renderer/program/program.ts';
import { startProgram } from '../../renderer/program/startProgram.ts';
import { type CorePort, createCoreClient } from '../../renderer/worker/coreClient.ts';
import { type FakeClock, fakeClock } from './fakeClock.ts';
import { hostOf } from './standInCore.ts';
import { createStandIn, type StandIn, type StandInFile, type StandInMemory } from './standInShell.ts';

export interface TestWindow {
  readonly program: Program;
  readonly standIn: StandIn;
  readonly clock: FakeClock;
  /** A sample drive as the shell picks it. */
  sample(name: string): Picked;
  /** A file with these bytes, as the shell picks it. */
  file(name: string, content: string | Uint8Array): Picked;
  /** Resolves when nothing is read, scored or saved any more. */
  quiet(): Promise<void>;
}

/** What survives when the program is closed and started again. */
export function emptyMemory(): StandInMemory {
  let text: string | null = null;
  return {
    load: () => text,
    keep: (newText) => {
      text = newText;
    },
  };
}

/** Starts the window, as a person would. With the same memory it finds what was kept. */
export async function startWindow(memory: StandInMemory = emptyMemory()): Promise<TestWindow> {
  const standIn = createStandIn(SAMPLE_DRIVES.map(sampleFile), memory);
  const clock = fakeClock();
  const core = createCoreClient();
  core.connect(corePort(standIn));
  let ids = 0;
  const program = createProgram({
    shell: standIn.shell,
    core,
    clock,
    newId: () => `id-${++ids}-${Math.trunc(clock.now())}`,
  });
  await startProgram(program);
  const quiet = () => untilQuiet(program, clock);
  await quiet();
  return {
    program,
    standIn,
    clock,
    quiet,
    sample: (name) => pickedOf(standIn, `sample-${fileOf(name)}`),
    file: (name, content) => {
      const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
      const bundle = looksLikeBundle(name, bytes) ? { bundle: true as const } : {};
      const picked = { token: `file-${name}-${bytes.length}`, name, bytes: bytes.length, sample: false, ...bundle };
      standIn.addFile({ picked, words: '', bytes: async () => bytes });
      return picked;
    },
  };
}

/** Both ends of a port in one thread, in the order of the messages. */
function corePort(standIn: StandIn): CorePort {
  const port: CorePort = {
    onmessage: null,
    close: () => undefined,
    postMessage: (message: unknown) => service.hear(message),
  };
  const service = startCoreService({
    host: hostOf(async (token) => {
      const file = standIn.fileOf(token);
      return file === null ? null : { name: file.picked.name, bytes: await file.bytes() };
    }),
    core: QUICK_CORE,
    slow: slowAnswersHere(SLOW_CORE, (fault) => reportError(fault)),
    post: (message: FromCore) => queueMicrotask(() => hear(port, message)),
  });
  return port;
}

function hear(port: CorePort, message: FromCore): void {
  const listener: unknown = port.onmessage;
  if (typeof listener === 'function') listener({ data: message });
}

function sampleFile({ file, words }: (typeof SAMPLE_DRIVES)[number]): StandInFile {
  const place = new URL(`../../assets/drives/${file}`, import.meta.url);
  const picked = { token: `sample-${file}`, name: file, bytes: 0, sample: true };
  return { picked, words, bytes: async () => new Uint8Array(await readFile(place)) };
}

function pickedOf(standIn: StandIn, token: string): Picked {
  const file = standIn.fileOf(token);
  if (file === null) throw new Error(`There is no file ${token}.`);
  return file.picked;
}

function fileOf(name: string): string {
  const drive = SAMPLE_DRIVES.find((one) => one.name === name);
  if (drive === undefined) throw new Error(`There is no sample drive ${name}.`);
  return drive.file;
}

async function untilQuiet({ captures, score, record }: Program, clock: FakeClock): Promise<void> {
  const busy = (): boolean => {
    const { pending, offer } = score.getState();
    return (
      captures.getState().jobs.length > 0 ||
      !tracesSettled() ||
      pending ||
      (offer !== null && offer.scores === null) ||
      record.getState().save === 'pending'
    );
  };
  let calm = 0;
  while (calm < 5) {
    clock.pass(300);
    await new Promise((resolve) => setImmediate(resolve));
    calm = busy() ? 0 : calm + 1;
  }
}

// A service under test: a host whose clock only moves when told, files in memory, and core functions that can be followed
// by eye: the "capture" read from a file holds as many samples as the file has bytes.

import type { CoreQuestionName, CoreQuestions, FromCore } from '../../../../core/bridge/coreMessages.ts';
import type { Capture } from '../../../../core/capture/capture.ts';
import type { Channel } from '../../../../core/capture/channel.ts';
import type { Problem } from '../../../../core/reading/problem.ts';
import type { QuickCore, SlowCore } from '../../../../core/service/coreFunctions.ts';
import { type CoreHost, type HeldBytes, SourceFault } from '../../../../core/service/coreHost.ts';
import { type CoreService, startCoreService } from '../../../../core/service/coreService.ts';
import { slowAnswersHere } from '../../../../core/service/slowAnswers.ts';

export const GONE: Problem = { id: 'vanished', what: 'The file is gone.', where: 'a.csv', doNext: 'Find it.' };

export function channelOf(id: string, values: readonly number[], part: Partial<Channel> = {}): Channel {
  const finite = values.filter(Number.isFinite);
  return {
    id,
    name: id,
    role: 'upstreamO2',
    bank: 1,
    sensor: 1,
    unit: 'V',
    fileUnit: 'V',
    time: { kind: 'regular', startS: 0, stepS: 1, length: values.length },
    values: Float32Array.from(values),
    facts: {
      finite: finite.length,
      min: Math.min(...finite),
      max: Math.max(...finite),
      medianRateHz: 1,
      jitterS: 0,
      renewalRateHz: 1,
      resolution: 0.005,
    },
    ...part,
  };
}

export function captureOf(name: string, channels: readonly Channel[]): Capture {
  return {
    name,
    bytes: 1000,
    durationS: 100,
    rows: 100,
    startClock: null,
    channels,
    warnings: [],
    layout: { id: 'text', words: 'Text', headerKey: 'h' },
  };
}

export interface Bench {
  readonly service: CoreService;
  /** Everything the service has said. */
  readonly said: FromCore[];
  readonly host: BenchHost;
  readonly faults: unknown[];
  ask<Name extends CoreQuestionName>(id: number, name: Name, ask: CoreQuestions[Name]['ask']): void;
  /** What was said to one question last: its reply, its refusal, or nothing yet. */
  answerTo(id: number): FromCore | undefined;
  /** Lets everything that can go on go on. */
  settle(): Promise<void>;
}

interface BenchHost extends CoreHost {
  /** Lets time go by. */
  pass(ms: number): void;
  /** Leaves so much memory for captures. */
  leave(bytes: number): void;
  readonly files: Map<string, BenchFile>;
  readonly closed: string[];
}

export interface BenchFile {
  readonly name: string;
  readonly chunks: number;
  /** Runs after each chunk was taken. */
  afterChunk?(chunk: number): void;
  readonly vanishesAt?: number;
  readonly changes?: boolean;
}

export function startBench(given: Partial<QuickCore & SlowCore> = {}): Bench {
  const said: FromCore[] = [];
  const faults: unknown[] = [];
  const host = benchHost(faults);
  const core = { ...countingCore, ...given };
  const service = startCoreService({
    host,
    core,
    slow: slowAnswersHere(core, host.tellFault),
    post: (message) => said.push(message),
  });
  return {
    service,
    said,
    host,
    faults,
    ask: (id, name, ask) => service.hear({ type: 'ask', id, name, ask }),
    answerTo: (id) => said.findLast((message) => message.id === id && message.type !== 'progress'),
    settle: async () => {
      for (let turn = 0; turn < 200; turn++) await Promise.resolve();
    },
  };
}

function benchHost(faults: unknown[]): BenchHost {
  const files = new Map<string, BenchFile>();
  const closed: string[] = [];
  let nowMs = 0;
  let memoryBytes = 1e9;
  return {
    files,
    closed,
    nowMs: () => nowMs,
    captureMemory: () => Promise.resolve(memoryBytes),
    pass: (ms) => {
      nowMs += ms;
    },
    leave: (bytes) => {
      memoryBytes = bytes;
    },
    pause: () => Promise.resolve(),
    tellFault: (fault) => faults.push(fault),
    async openBytes(token) {
      const file = files.get(token);
      return file === undefined ? { ok: false, problem: GONE } : { ok: true, value: bytesOf(file, closed) };
    },
  };
}

function bytesOf(file: BenchFile, closed: string[]): HeldBytes {
  return {
    source: {
      name: file.name,
      bytes: file.chunks,
      rereadable: true,
      async *chunks() {
        for (let chunk = 1; chunk <= file.chunks; chunk++) {
          if (chunk === file.vanishesAt) throw new SourceFault(GONE);
          yield Uint8Array.of(chunk);
          file.afterChunk?.(chunk);
        }
      },
    },
    finish: async () =>
      file.changes === true
        ? { ok: false, problem: { ...GONE, id: 'changed' } }
        : { ok: true, value: { sha256: 'ab'.repeat(32) } },
    close: async () => void closed.push(file.name),
  };
}

const notAsked = () => {
  throw new Error('not part of this test');
};

const countingCore: QuickCore & SlowCore = {
  async readCapture(source, { onProgress, isCancelled }) {
    let rows = 0;
    for await (const chunk of source.chunks()) {
      rows += chunk.byteLength;
      onProgress?.({ bytesRead: rows, bytesTotal: source.bytes, rows });
      if (isCancelled?.() === true) return { ok: false, problem: { ...GONE, id: 'cancelled' } };
    }
    const values = Array.from({ length: rows }, (_, i) => i);
    return { ok: true, value: { capture: captureOf(source.name, [channelOf('c0', values)]), question: null } };
  },
  drawerOf: (channel) => (startS, endS) => ({
    channelId: channel.id,
    kind: 'samples',
    startS,
    endS,
    // A part of a large buffer, as a reader of columns may give it.
    timesS: new Float64Array(1000).subarray(0, 2),
    low: Float32Array.from(channel.values.subarray(0, 2)),
    high: Float32Array.from(channel.values.subarray(0, 2)),
    steps: false,
    gapS: 5,
  }),
  suggestWindows: notAsked,
  scoreWindow: notAsked,
  judgeVehicle: notAsked,
  modelTraces: notAsked,
  compareWindows: notAsked,
};

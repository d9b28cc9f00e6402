// What reading is measured against: two CSV libraries of this language, a compiled data-frame reader and a numeric text
// reader of another, and the bare bytes. Each answers with seconds, or null where it is not installed.

import { spawnSync } from 'node:child_process';
import { createReadStream, readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { parse } from 'csv-parse';
import Papa from 'papaparse';
import { buildPyramid } from '../../core/capture/pyramid.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { fileBytes } from '../../main/coreProcess/fileBytes.ts';
import { hasherFor } from '../../main/coreProcess/hasherFor.ts';
import { buildThread } from '../support/buildThread.ts';

export interface Contestant {
  readonly name: string;
  /** Seconds for one pass, or null. */
  run(path: string): Promise<number | null>;
}

/** The whole path of the product: bytes from disk, SHA-256 in the same pass, columns, roles, facts, pyramids. */
export const product: Contestant = {
  name: 'this program, whole path',
  async run(path) {
    await hashScript();
    const began = performance.now();
    await readWhole(path);
    return (performance.now() - began) / 1000;
  },
};

/** The script of the thread that hashes long files, built once. */
let built: Promise<string> | null = null;
function hashScript(): Promise<string> {
  built ??= buildThread('main/coreProcess/hashThread.ts', resolve('.cache', 'bench', 'threads'));
  return built;
}

/** Reads a capture as the program does; the pyramids are returned so that nothing is optimised away. */
export async function readWhole(
  path: string,
): Promise<{ readonly values: number; readonly pyramids: readonly unknown[] }> {
  const opened = await fileBytes(path, basename(path), hasherFor(await hashScript()));
  if (!opened.ok) throw new Error(opened.problem.what);
  const { source, finish, close } = opened.value;
  try {
    const outcome = await readCapture(source, { choice: null });
    const finished = await finish();
    if (!outcome.ok || !finished.ok) throw new Error('The large capture could not be read.');
    const { channels } = outcome.value.capture;
    const values = channels.reduce((sum, channel) => sum + channel.values.length, 0);
    return { values, pyramids: channels.map((channel) => buildPyramid(channel.values)) };
  } finally {
    await close();
  }
}

const bytesAlone: Contestant = {
  name: 'bytes alone',
  async run(path) {
    const began = performance.now();
    readFileSync(path);
    return (performance.now() - began) / 1000;
  },
};

/** As it is meant to be used for numbers: it makes them itself. */
const papaparse: Contestant = {
  name: 'papaparse, its numbers',
  async run(path) {
    const began = performance.now();
    const columns: number[][] = [];
    await new Promise<void>((done, failed) => {
      Papa.parse<number[]>(createReadStream(path), {
        dynamicTyping: true,
        skipEmptyLines: true,
        chunk: ({ data }) => {
          for (const row of data) row.forEach((cell, k) => void pushTo(columns, k, cell));
        },
        complete: () => done(),
        error: failed,
      });
    });
    return (performance.now() - began) / 1000;
  },
};

/**
 * The least it can be made to do: texts only, numbers by Number(). The fair one: it was its 30 MB/s, beside 440 to 470 MB/s
 * of a bare scanner, that the target of 12 times was set against, and its own numbers take twice as long.
 */
const papaparseTexts: Contestant = {
  name: 'papaparse, our Number()',
  async run(path) {
    const began = performance.now();
    const columns: number[][] = [];
    await new Promise<void>((done, failed) => {
      Papa.parse<string[]>(createReadStream(path), {
        skipEmptyLines: true,
        chunk: ({ data }) => {
          for (const row of data) row.forEach((cell, k) => void pushTo(columns, k, Number(cell)));
        },
        complete: () => done(),
        error: failed,
      });
    });
    return (performance.now() - began) / 1000;
  },
};

const csvParse: Contestant = {
  name: 'csv-parse',
  async run(path) {
    const began = performance.now();
    const columns: number[][] = [];
    for await (const row of createReadStream(path).pipe(parse())) {
      const cells: readonly string[] = row;
      cells.forEach((cell, k) => {
        pushTo(columns, k, Number(cell));
      });
    }
    return (performance.now() - began) / 1000;
  },
};

function pushTo(columns: number[][], k: number, value: number): void {
  const column = columns[k] ?? [];
  columns[k] = column;
  column.push(value);
}

/** Seconds that a few lines of Python print for themselves, their imports not counted; null where a module is missing. */
function python(name: string, imports: string, statement: string): Contestant {
  return {
    name,
    async run(path) {
      const code = `import time\n${imports}\np = ${JSON.stringify(path)}\nt = time.perf_counter()\n${statement}\nprint(time.perf_counter() - t)`;
      const { status, stdout } = spawnSync('/usr/bin/python3', ['-c', code], { encoding: 'utf8', timeout: 300_000 });
      return status === 0 ? Number(stdout.trim()) : null;
    },
  };
}

export const numpy = python('numpy.loadtxt', 'import numpy', "numpy.loadtxt(p, delimiter=',', skiprows=1)");
export const pandas = python('pandas.read_csv', 'import pandas', 'pandas.read_csv(p)');

export const CONTESTANTS: readonly Contestant[] = [
  product,
  bytesAlone,
  numpy,
  pandas,
  papaparse,
  papaparseTexts,
  csvParse,
];

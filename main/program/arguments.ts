// What the program was started with.

import { isAbsolute, resolve } from 'node:path';

/** A picture of the window instead of a session with it. */
export interface SnapshotWish {
  readonly picture: string;
  readonly width: number;
  readonly height: number;
}

/** A sheet to be printed to a file without any window. */
export interface PrintWish {
  readonly sheet: string;
  readonly pdf: string;
  readonly paper: 'A4' | 'Letter';
}

export interface ProgramArguments {
  /** Absolute paths of captures, in the order given. */
  readonly captures: readonly string[];
  readonly snapshot: SnapshotWish | null;
  readonly print: PrintWish | null;
}

const DEFAULT_SIZE = { width: 1280, height: 800 };

/**
 * Reads the words behind the executable. Switches of the runtime are passed over; the program's own folder, which is
 * the first word when it is started from its source, is no capture. `folder` is what relative paths are counted from.
 */
export function readArguments(words: readonly string[], folder: string, appPath: string): ProgramArguments {
  const switches = new Map<string, string>();
  const captures: string[] = [];
  for (const word of words) {
    const [, name, value] = /^--([a-z-]+)=(.*)$/s.exec(word) ?? [];
    if (name !== undefined && value !== undefined) switches.set(name, value);
    else if (!word.startsWith('-')) captures.push(isAbsolute(word) ? word : resolve(folder, word));
  }
  return {
    captures: captures.filter((path) => path !== resolve(appPath)),
    snapshot: snapshotWish(switches),
    print: printWish(switches),
  };
}

function snapshotWish(switches: ReadonlyMap<string, string>): SnapshotWish | null {
  const picture = switches.get('snapshot');
  if (picture === undefined || picture === '') return null;
  const [, width, height] = /^(\d{3,4})x(\d{3,4})$/.exec(switches.get('snapshot-size') ?? '') ?? [];
  const size =
    width !== undefined && height !== undefined ? { width: Number(width), height: Number(height) } : DEFAULT_SIZE;
  return { picture, ...size };
}

function printWish(switches: ReadonlyMap<string, string>): PrintWish | null {
  const sheet = switches.get('print-sheet');
  const pdf = switches.get('print-to');
  if (sheet === undefined || pdf === undefined) return null;
  return { sheet, pdf, paper: switches.get('paper') === 'Letter' ? 'Letter' : 'A4' };
}

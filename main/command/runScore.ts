// The headless command from words to exit status. What it needs from outside comes with `world`, so that tests can stand
// in for any of it.

import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { Readable } from 'node:stream';
import { buildCommandReport, buildDescribeReport } from '../../core/contract/buildCommandReport.ts';
import { showControlsOnOneLine } from '../../core/evidence/words/showControls.ts';
import type { ColumnsFile } from '../../core/reading/columnsFile.ts';
import { type Outcome, type Problem, problemLine } from '../../core/reading/problem.ts';
import type { readCapture } from '../../core/reading/readCapture.ts';
import type { scoreCapture } from '../../core/scoreCapture.ts';
import { celsius } from '../../core/thermal/pairOf.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { kindOf } from '../../core/windows/kindOf.ts';
import { suggestWindows } from '../../core/windows/suggestWindows.ts';
import type { CaptureWindow } from '../../core/windows/window.ts';
import { readProblem } from '../captures/openRegularFile.ts';
import { readArguments, type ScoreArguments } from './arguments.ts';
import { isColumnsProblem, readColumnsFile } from './columnsFile.ts';
import { EXIT_STATUS, type ExitStatus, worst } from './exitStatus.ts';
import { jsonLine } from './jsonLine.ts';
import { describeLines, peopleLines } from './peopleReport.ts';
import { type ReadWithChoice, readInput } from './readInput.ts';
import { type ScoredInput, sheetOf } from './sheetFile.ts';
import { placeWindow } from './typedWindow.ts';
import { USAGE } from './usage.ts';

export interface World {
  /** Writes to standard output and standard error; text brings its own line ends. */
  out(text: string): void;
  err(text: string): void;
  readonly stdin: Readable;
  /** Relative paths are counted from here. */
  readonly folder: string;
  /** RFC 3339 with offset. */
  now(): string;
  readonly read: typeof readCapture;
  /** Bytes that the values of a capture may take now. */
  memory(): Promise<number>;
  readonly score: typeof scoreCapture;
  /** Writes the sheet; a refusal says why it could not. */
  writeSheet(sheet: ReturnType<typeof sheetOf>, to: NonNullable<ScoreArguments['sheet']>): Promise<Outcome<null>>;
}

/** Runs the command. Resolves with its exit status; rejects only where a promise inside the program is broken. */
export async function runScore(words: readonly string[], world: World): Promise<ExitStatus> {
  const read = readArguments(words);
  if (read.kind === 'help') return said(world, USAGE);
  if (read.kind === 'version') return said(world, `${CORE_VERSION}\n`);
  if (read.kind === 'wrong') return complain(world, `${read.sentence} See --help.`, EXIT_STATUS.wrongUsage);
  const columns = await columnsOf(read.arguments.columns, world);
  if (!columns.ok) return complain(world, problemLine(columns.problem), EXIT_STATUS.wrongUsage);
  return scoreAll(read.arguments, columns.value, world);
}

type Columns = { readonly file: ColumnsFile; readonly name: string } | null;

async function scoreAll(asked: ScoreArguments, columns: Columns, world: World): Promise<ExitStatus> {
  const statuses: ExitStatus[] = [];
  const scored: ScoredInput[] = [];
  for (const [i, named] of asked.captures.entries()) {
    const place = {
      named,
      input: i + 1,
      folder: world.folder,
      stdin: world.stdin,
      read: world.read,
      memory: world.memory,
    };
    const one = await readInput(place, columns);
    if (!one.ok) statuses.push(complain(world, problemLine(one.problem), statusOf(one.problem)));
    else if (asked.describe) statuses.push(describeOne(one.value, asked, world));
    else statuses.push(scoreOne(one.value, asked, world, scored));
  }
  if (asked.sheet !== null && scored.length > 0) {
    const written = await world.writeSheet(sheetOf(scored, asked, world.now()), asked.sheet);
    if (!written.ok) statuses.push(complain(world, problemLine(written.problem), EXIT_STATUS.wrongUsage));
  }
  return worst(statuses);
}

function describeOne(read: ReadWithChoice, asked: ScoreArguments, world: World): ExitStatus {
  world.out(asked.json ? jsonLine(buildDescribeReport(read)) : linesText(describeLines(read)));
  return EXIT_STATUS.judged;
}

function scoreOne(read: ReadWithChoice, asked: ScoreArguments, world: World, scored: ScoredInput[]): ExitStatus {
  const windows = windowsFor(read, asked);
  if (typeof windows === 'string') return complain(world, `${read.capture.name}: ${windows}`, EXIT_STATUS.wrongUsage);
  const score = world.score(read.capture, {
    windows,
    bank: asked.bank,
    thermal: asked.temperatures.map(({ inlet, outlet }, i) => ({
      inletC: celsius(inlet),
      outletC: celsius(outlet),
      bank: asked.bank,
      brick: i + 1,
      rpm: null,
      emissivity: null,
    })),
    troubleCodes: asked.troubleCodes,
  });
  world.out(asked.json ? jsonLine(buildCommandReport(read, score)) : linesText([...peopleLines(read, score), '']));
  // Only what the sheet needs is kept, and only where there will be one: captures are large.
  if (asked.sheet !== null) scored.push({ ...read, windows: windows ?? suggestWindows(read.capture) });
  return EXIT_STATUS.judged;
}

/** The windows that were asked for, placed in this capture; null for the suggested ones; a sentence where one has no place. */
function windowsFor({ capture }: ReadWithChoice, { windows, bank }: ScoreArguments): CaptureWindow[] | null | string {
  if (windows === null) return null;
  const placed: CaptureWindow[] = [];
  for (const window of windows) {
    const stretch = placeWindow(window, capture);
    if (typeof stretch === 'string') return stretch;
    placed.push({ ...stretch, bank, kind: kindOf(capture, stretch), origin: 'byHand' });
  }
  return placed;
}

async function columnsOf(path: string | null, world: World): Promise<Outcome<Columns>> {
  if (path === null) return { ok: true, value: null };
  const name = basename(path);
  try {
    const file = readColumnsFile(await readFile(resolve(world.folder, path), 'utf8'), name);
    return file.ok ? { ok: true, value: { file: file.value, name } } : file;
  } catch (fault) {
    return { ok: false, problem: readProblem(fault, name) };
  }
}

function statusOf(problem: Problem): ExitStatus {
  return isColumnsProblem(problem) ? EXIT_STATUS.wrongUsage : EXIT_STATUS.notRead;
}

function complain(world: World, sentence: string, status: ExitStatus): ExitStatus {
  world.err(`${showControlsOnOneLine(sentence)}\n`);
  return status;
}

function said(world: World, text: string): ExitStatus {
  world.out(text);
  return EXIT_STATUS.judged;
}

function linesText(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}

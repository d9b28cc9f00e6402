// The headless command from words to exit status. What it needs from outside comes with `world`, so that tests can stand
// in for any of it.

import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { Readable } from 'node:stream';
import { buildCommandReport, buildDescribeReport } from '../../core/contract/buildCommandReport.ts';
import type { ReportedBundle } from '../../core/contract/commandReport.ts';
import type { Sheet } from '../../core/evidence/sheet.ts';
import { showControlsOnOneLine } from '../../core/evidence/words/showControls.ts';
import { type Outcome, type Problem, problemLine } from '../../core/reading/problem.ts';
import type { readCapture } from '../../core/reading/readCapture.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { ScoreRequest, scoreCapture } from '../../core/scoreCapture.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { suggestWindows } from '../../core/windows/suggestWindows.ts';
import { isBundleFile } from '../bundles/isBundleFile.ts';
import { readProblem } from '../captures/openRegularFile.ts';
import { readArguments, type ScoreArguments } from './arguments.ts';
import { bundleLines, comparedLines, notEnclosedLines } from './bundleLines.ts';
import { isColumnsProblem, readColumnsFile } from './columnsFile.ts';
import { compareFindings } from './compareFindings.ts';
import { EXIT_STATUS, type ExitStatus, worst } from './exitStatus.ts';
import { jsonLine } from './jsonLine.ts';
import { describeLines, peopleLines } from './peopleReport.ts';
import { readBundled } from './readBundled.ts';
import { type Columns, type InputPlace, type ReadWithChoice, readInput } from './readInput.ts';
import { overrides, requestOfFlags, requestOfRecord } from './scoreRequest.ts';
import { type ScoredInput, sheetOf } from './sheetFile.ts';
import { sheetOverInput } from './sheetOverInput.ts';
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
  writeSheet(sheet: Sheet, to: NonNullable<ScoreArguments['sheet']>): Promise<Outcome<null>>;
}

/** Runs the command. Resolves with its exit status; rejects only where a promise inside the program is broken. */
export async function runScore(words: readonly string[], world: World): Promise<ExitStatus> {
  const read = readArguments(words);
  if (read.kind === 'help') return said(world, USAGE);
  if (read.kind === 'version') return said(world, `${CORE_VERSION}\n`);
  if (read.kind === 'wrong') return complain(world, `${read.sentence} See --help.`, EXIT_STATUS.wrongUsage);
  const over = await sheetOverInput(read.arguments, world.folder);
  if (over !== null) return complain(world, problemLine(over), EXIT_STATUS.wrongUsage);
  const columns = await columnsOf(read.arguments.columns, world);
  if (!columns.ok) return complain(world, problemLine(columns.problem), EXIT_STATUS.wrongUsage);
  return scoreAll(read.arguments, columns.value, world);
}

/** One call of the command. */
interface Run {
  readonly asked: ScoreArguments;
  readonly columns: Columns;
  readonly world: World;
  /** What the sheet needs of each capture, and only where there will be one: captures are large. */
  readonly scored: ScoredInput[];
  /** The record of a bundle that is the whole of what was asked for: the sheet is then that of its vehicle. */
  bundled: VehicleRecord | null;
}

async function scoreAll(asked: ScoreArguments, columns: Columns, world: World): Promise<ExitStatus> {
  const run: Run = { asked, columns, world, scored: [], bundled: null };
  const statuses: ExitStatus[] = [];
  for (const [i, named] of asked.captures.entries()) {
    const { folder, stdin, read, memory } = world;
    statuses.push(...(await scoreNamed({ named, input: i + 1, folder, stdin, read, memory }, run)));
  }
  if (asked.sheet !== null && run.scored.length > 0) {
    const written = await world.writeSheet(await sheetOf(run.scored, asked, world.now(), run.bundled), asked.sheet);
    if (!written.ok) statuses.push(complain(world, problemLine(written.problem), EXIT_STATUS.wrongUsage));
  }
  return worst(statuses);
}

/** One name on the command line: a capture, or a bundle with its captures. */
async function scoreNamed(place: InputPlace, run: Run): Promise<ExitStatus[]> {
  const path = resolve(place.folder, place.named);
  if (place.named !== '-' && (await isBundleFile(path, basename(path)))) return scoreBundle(path, place, run);
  const one = await readInput(place, run.columns);
  if (!one.ok) return [complain(run.world, problemLine(one.problem), statusOf(one.problem))];
  if (run.asked.describe) return [describeOne(one.value, run)];
  return [scoreOne(one.value, requestOfFlags(one.value.capture, run.asked), run)];
}

/** Judges what a bundle holds, capture by capture, with what its record says of each. */
async function scoreBundle(path: string, place: InputPlace, run: Run): Promise<ExitStatus[]> {
  const { asked, world } = run;
  const name = basename(path);
  const opened = await readBundled(path, name, place, run.columns);
  if (!opened.ok) return [complain(world, problemLine(opened.problem), EXIT_STATUS.notRead)];
  const { bundle, record, captures } = opened.value;
  if (!asked.json) world.out(linesText(bundleLines(name, bundle)));
  for (const line of notEnclosedLines(bundle)) world.err(`${line}\n`);
  if (asked.captures.length === 1 && !overrides(asked)) run.bundled = record;
  const tell = asked.describe ? null : compareFindings(name, opened.value);
  return captures.map((one) => {
    if (!one.ok) return complain(world, problemLine(one.problem), statusOf(one.problem));
    const { read, captureId } = one.value;
    const ref = record.captures[captureId];
    if (tell === null || ref === undefined) return describeOne(read, run);
    const request = requestOfRecord(read.capture, asked, record, ref);
    return scoreOne(read, request, run, { captureId, bundle: tell(captureId) });
  });
}

function describeOne(read: ReadWithChoice, { asked, world }: Run): ExitStatus {
  world.out(asked.json ? jsonLine(buildDescribeReport(read)) : linesText(describeLines(read)));
  return EXIT_STATUS.judged;
}

/** `request` is a sentence where a window that was asked for has no place in the capture. */
function scoreOne(
  read: ReadWithChoice,
  request: ScoreRequest | string,
  { asked, world, scored, bundled }: Run,
  from: { readonly captureId: string; readonly bundle: ReportedBundle } | null = null,
): ExitStatus {
  if (typeof request === 'string') return complain(world, `${read.capture.name}: ${request}`, EXIT_STATUS.wrongUsage);
  const score = world.score(read.capture, request);
  if (asked.json) {
    const report = buildCommandReport(read, score);
    world.out(jsonLine(from === null ? report : { ...report, bundle: from.bundle }));
  } else {
    const compared = from === null ? [] : comparedLines(from.bundle);
    world.out(linesText([...peopleLines(read, score), ...compared, '']));
  }
  if (asked.sheet !== null) {
    const captureId = bundled === null || from === null ? `c${scored.length + 1}` : from.captureId;
    scored.push({ ...read, captureId, windows: request.windows ?? suggestWindows(read.capture) });
  }
  return EXIT_STATUS.judged;
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

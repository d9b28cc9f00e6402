import { buildSheet } from '../../core/evidence/buildSheet.ts';
import type { Sheet } from '../../core/evidence/sheet.ts';
import type { CaptureFacts, Included, SheetComparison, SheetPicture } from '../../core/evidence/sheetInput.ts';
import { describe, tracePicture } from '../../core/evidence/tracePicture.ts';
import { checkOpinions } from '../../core/opinions/chain.ts';
import { canonicalJson } from '../../core/record/canonical.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { CORE_VERSION } from '../../core/version.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { lowerFirst } from '../../core/words/numbers.ts';
import type { Program } from '../program/program.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { captureWindow } from '../state/selectors/captureWindow.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { firstPanes } from '../workspace/firstPanes.ts';
import { pictureOf } from './makePicture.ts';
import { sha256Of } from './sha256.ts';

/**
 * The evidence sheet of the open vehicle as it stands, once it is scored so; null where it cannot be scored or none is open.
 * `handedOver` is the record that goes with it, where one does: the hash on the sheet is then that record's.
 */
export async function makeSheet(
  program: Program,
  include: Included,
  handedOver: VehicleRecord | null = null,
): Promise<Sheet | null> {
  await scored(program);
  const record = recordOf(program.record.getState());
  const { score, problem } = program.score.getState();
  if (record === null || score === null || problem !== null) return null;
  const { settings } = program.settings.getState();
  return buildSheet({
    record,
    score,
    opinions: await checkOpinions(record, sha256Of),
    captures: factsOf(program.captures.getState().held, record),
    pictures: await picturesOf(program, record),
    comparisons: await comparisonsOf(program, record),
    hash: { of: 'the vehicle record', sha256: await sha256Of(canonicalJson(handedOver ?? record)) },
    settings: {
      temperatureUnit: settings.temperatureUnit,
      decimalSign: '.',
      paper: settings.paper,
      include,
      madeAt: program.clock.instant(),
      reader: settings.reader,
      coreVersion: CORE_VERSION,
    },
  });
}

/** Resolves when no score is under way: until then the last one may be about the windows of a moment ago. */
export async function scored({ score }: Program): Promise<void> {
  if (!score.getState().pending) return;
  await new Promise<void>((resolve) => {
    const stop = score.subscribe(({ pending }) => {
      if (pending) return;
      stop();
      resolve();
    });
  });
}

function factsOf(held: Readonly<Record<string, HeldCapture>>, record: VehicleRecord): Record<string, CaptureFacts> {
  return Object.fromEntries(
    Object.values(held)
      .filter(({ captureId }) => record.captures[captureId] !== undefined)
      .map(({ captureId, summary }) => [captureId, summary]),
  );
}

/** One picture of each open capture that has windows, over the stretch that holds them all. */
async function picturesOf(program: Program, record: VehicleRecord): Promise<SheetPicture[]> {
  const pictures: SheetPicture[] = [];
  for (const held of Object.values(program.captures.getState().held)) {
    const stretch = windowsHull(record, held.captureId, held.summary.durationS);
    if (stretch === null) continue;
    const input = await pictureOf(program, record, held, firstPanes(held.summary, true), stretch);
    if (input === null) continue;
    const name = record.captures[held.captureId]?.name ?? held.summary.name;
    pictures.push({
      captureId: held.captureId,
      caption: `Traces of ${name} with the windows that were judged.`,
      alternative: describe(input),
      svg: tracePicture(input),
    });
  }
  return pictures;
}

function windowsHull(record: VehicleRecord, captureId: string, durationS: number): Stretch | null {
  const windows = Object.values(record.windows).filter((window) => window.captureId === captureId);
  if (windows.length === 0) return null;
  const startS = Math.min(...windows.map((window) => window.startS));
  const endS = Math.max(...windows.map((window) => window.endS));
  const room = (endS - startS) * 0.08;
  return { startS: Math.max(0, startS - room), endS: Math.min(durationS, endS + room) };
}

/** The comparison that is being looked at, where there is one. */
async function comparisonsOf(program: Program, record: VehicleRecord): Promise<SheetComparison[]> {
  const { compare } = program.workspace.getState();
  if (compare === null) return [];
  const sides = [compare.firstId, compare.secondId].map((id) => sideOf(program, record, id));
  const [first, second] = sides;
  if (first == null || second == null) return [];
  const outcome = await program.core.ask('compare', { first: first.held, second: second.held });
  if (outcome.ok) return [{ first: first.words, second: second.words, comparison: outcome.value }];
  const what = `The sheet holds no comparison: ${lowerFirst(outcome.problem.what)}`;
  program.notices.getState().tell('export', { ...outcome.problem, what });
  return [];
}

function sideOf(program: Program, record: VehicleRecord, windowId: string) {
  const window = record.windows[windowId];
  const held = program.captures.getState().held[window?.captureId ?? ''];
  if (window === undefined || held === undefined) return null;
  const name = record.captures[window.captureId]?.name ?? held.summary.name;
  return { held: { key: held.summary.key, window: captureWindow(window) }, words: `${windowName(window)} of ${name}` };
}

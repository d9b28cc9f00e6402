// Undoing what reading repaired, in the whole window on the real core. Times and rows are worked by hand in the file below.

import { describe, expect, it } from 'vitest';
import { repairOf } from '../../../../core/capture/repairs.ts';
import { choiceFromFile, columnsFileSchema } from '../../../../core/reading/columnsFile.ts';
import type { ColumnQuestion } from '../../../../core/reading/readCapture.ts';
import { addWindow } from '../../../../core/record/edits/windows.ts';
import { changeColumns, columnQuestion } from '../../../../renderer/actions/changeColumns.ts';
import { changeRepair } from '../../../../renderer/actions/changeRepair.ts';
import { exportColumns } from '../../../../renderer/actions/exportColumns.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { runCommand } from '../../../../renderer/commands/runCommand.ts';
import { choiceOf } from '../../../../renderer/dialogs/columnChoice.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { shownCapture, shownView } from '../../../../renderer/state/selectors/shown.ts';
import { emptyMemory, startWindow, type TestWindow } from '../../../support/windowProgram.ts';

/** Two recordings of 30 s and 20 s, ten rows a second: behind each other they last 29.9 + 10 + 19.9 s, laid over 29.9 s. */
const TWICE = ['Time (s),O2 B1S1 (V),O2 B1S2 (V),RPM', ...rows(300), ...rows(200)].join('\n');

function rows(count: number): string[] {
  return Array.from({ length: count }, (_, i) => `${(i / 10).toFixed(1)},${i % 10 < 5 ? 0.1 : 0.8},0.65,2300`);
}

async function opened(memory = emptyMemory()): Promise<TestWindow & { readonly captureId: string }> {
  const window = await startWindow(memory);
  await openPicked(window.program, [window.file('twice.csv', TWICE)]);
  await window.quiet();
  return { ...window, captureId: idOf(window) };
}

function idOf({ program }: TestWindow): string {
  const { captureId } = program.workspace.getState();
  if (captureId === null) throw new Error('no capture is shown');
  return captureId;
}

const undo = ({ program, captureId }: TestWindow & { readonly captureId: string }, make = false) =>
  changeRepair(program, captureId, 'secondRecording', make);
const lastsS = ({ program }: TestWindow) => shownCapture(program)?.summary.durationS;
const repairs = ({ program }: TestWindow) =>
  shownCapture(program)?.summary.warnings.flatMap((warning) => repairOf(warning) ?? []);
const capture = ({ program }: TestWindow) => Object.values(recordOf(program.record.getState())?.captures ?? {})[0];

async function asked(...of: Parameters<typeof columnQuestion>): Promise<ColumnQuestion> {
  const outcome = await columnQuestion(...of);
  if (!outcome.ok || outcome.value === null) throw new Error('nothing was asked');
  return outcome.value;
}

describe('undoing a repair', () => {
  it('reads the capture anew, is one step of the history, and can be made again', async () => {
    const window = await opened();
    const before = shownCapture(window.program)?.summary;
    expect(before?.durationS).toBe(59.8);
    await undo(window);
    await window.quiet();
    expect(lastsS(window)).toBe(29.9);
    expect(repairs(window)).toEqual([{ id: 'secondRecording', made: false }]);
    expect(capture(window)).toMatchObject({ durationS: 29.9, rows: 500 });
    expect(capture(window)?.columnChoice?.asWritten).toEqual(['secondRecording']);
    expect(window.program.notices.getState().words).toBe(
      'The repair was undone in twice.csv. Windows and notes keep their seconds and may now lie over other rows.',
    );
    runCommand(window.program, 'edit.undo');
    await window.quiet();
    expect([lastsS(window), capture(window)?.columnChoice]).toEqual([59.8, null]);
    runCommand(window.program, 'edit.redo');
    await window.quiet();
    expect(lastsS(window)).toBe(29.9);
    await undo(window, true);
    await window.quiet();
    expect(capture(window)?.columnChoice).toBeNull();
    expect(shownCapture(window.program)?.summary).toEqual({ ...before, key: expect.any(String) });
  });

  it('keeps windows and notes at their seconds, and the capture in sight', async () => {
    const window = await opened();
    const { record, workspace } = window.program;
    const marked = { captureId: window.captureId, name: 'Hold', startS: 42, endS: 55, bank: 1 } as const;
    record.getState().edit(addWindow({ ...marked, id: 'w', kind: 'mixed', origin: 'byHand' }));
    workspace.getState().look({ startS: 0, endS: 59.8 }, true);
    await undo(window);
    await window.quiet();
    expect(recordOf(record.getState())?.windows.w).toMatchObject({ startS: 42, endS: 55 });
    expect(shownView(window.program)?.visible).toEqual({ startS: 0, endS: 29.9 });
    workspace.getState().look({ startS: 20, endS: 29.9 }, true);
    await undo(window, true);
    await window.quiet();
    expect(shownView(window.program)?.visible).toEqual({ startS: 20, endS: 29.9 });
    workspace.getState().look({ startS: 45, endS: 55 }, true);
    await undo(window);
    await window.quiet();
    expect(shownView(window.program)?.visible).toEqual({ startS: expect.closeTo(19.9, 9), endS: 29.9 });
  });

  it('asked for twice at once, or with another, loses none', async () => {
    const window = await startWindow();
    const coarse = TWICE.replaceAll(/\n(\d+)\.\d/g, '\n$1');
    await openPicked(window.program, [window.file('coarse.csv', coarse)]);
    await window.quiet();
    const captureId = idOf(window);
    const both = [undo({ ...window, captureId }), undo({ ...window, captureId })];
    await Promise.all([...both, changeRepair(window.program, captureId, 'duplicateTimes', false)]);
    await window.quiet();
    expect(repairs(window)?.map(({ made }) => made)).toEqual([false, false]);
    expect(capture(window)?.columnChoice?.asWritten).toEqual(['secondRecording', 'duplicateTimes']);
    runCommand(window.program, 'edit.undo');
    await window.quiet();
    expect(capture(window)?.columnChoice?.asWritten).toEqual(['secondRecording']);
    expect(repairs(window)?.map(({ made }) => made)).toEqual([false, true]);
  });

  it('changes nothing where the file is another one by now, and says so', async () => {
    const window = await opened();
    const token = window.file('twice.csv', TWICE);
    const other = new TextEncoder().encode(TWICE.replace('0.8', '0.9'));
    window.standIn.addFile({ picked: token, words: '', bytes: async () => other });
    await undo(window);
    await window.quiet();
    expect(lastsS(window)).toBe(59.8);
    expect(capture(window)?.columnChoice).toBeNull();
    expect(window.program.notices.getState().problems.map(({ problem }) => problem)).toMatchObject([
      { id: 'fileChanged', where: 'twice.csv' },
    ]);
    window.file('twice.csv', TWICE);
    await undo(window);
    await window.quiet();
    expect([lastsS(window), window.program.notices.getState().problems]).toEqual([29.9, []]);
  });

  it('by undo, where the file is another one by now, leaves the record right and the capture missed', async () => {
    const window = await opened();
    await undo(window);
    await window.quiet();
    const picked = window.file('twice.csv', TWICE);
    const other = new TextEncoder().encode(TWICE.replace('0.8', '0.9'));
    window.standIn.addFile({ picked, words: '', bytes: async () => other });
    runCommand(window.program, 'edit.undo');
    await window.quiet();
    const { held, missing } = window.program.captures.getState();
    expect([capture(window)?.columnChoice, Object.keys(held)]).toEqual([null, []]);
    expect(missing).toEqual({ [window.captureId]: { captureId: window.captureId, why: 'changed' } });
    expect(window.program.notices.getState().problems).toHaveLength(1);
  });

  it('changes nothing in a record that can only be read', async () => {
    const window = await opened();
    const record = recordOf(window.program.record.getState());
    if (record === null) throw new Error('no vehicle is open');
    window.program.record.getState().open(record, true);
    await undo(window);
    expect(lastsS(window)).toBe(59.8);
  });
});

describe('what was undone', () => {
  it('is still undone after a restart, and when the same file is opened once more', async () => {
    const memory = emptyMemory();
    const window = await opened(memory);
    await undo(window);
    await window.quiet();
    const again = await startWindow(memory);
    await openPicked(again.program, [again.file('twice.csv', TWICE)]);
    await again.quiet();
    expect(capture(again)?.columnChoice?.asWritten).toEqual(['secondRecording']);
    expect([lastsS(again), repairs(again)]).toEqual([29.9, [{ id: 'secondRecording', made: false }]]);
  });

  it('stays with its capture when columns are chosen, and does not go to other files with the same header', async () => {
    const memory = emptyMemory();
    const window = await startWindow(memory);
    // Columns without names are asked about, and so the answer is recalled for the next such file.
    const unnamed = TWICE.replace('O2 B1S1 (V),O2 B1S2 (V),RPM', 'A,B,C');
    await openPicked(window.program, [window.file('unnamed.csv', unnamed)]);
    await window.quiet();
    const captureId = idOf(window);
    await undo({ ...window, captureId });
    await window.quiet();
    const question = await asked(window.program, captureId);
    const guesses = question.guesses.map((guess) =>
      guess.name === 'A' ? { ...guess, role: 'upstreamO2' as const, bank: 1 as const } : guess,
    );
    expect(await changeColumns(window.program, captureId, choiceOf(question.headerKey, guesses, null))).toBeNull();
    await window.quiet();
    expect(lastsS(window)).toBe(29.9);
    expect(shownCapture(window.program)?.summary.channels[0]?.role).toBe('upstreamO2');
    const other = await startWindow(memory);
    await openPicked(other.program, [other.file('other.csv', `${unnamed}\n20.0,0.1,0.65,2300`)], 'new');
    await other.quiet();
    expect(shownCapture(other.program)?.summary.channels[0]?.role).toBe('upstreamO2');
    expect(repairs(other)).toEqual([{ id: 'secondRecording', made: true }]);
  });

  it('goes with the exported columns file, from which a second reader reads the same', async () => {
    const window = await opened();
    await undo(window);
    await window.quiet();
    const question = await asked(window.program, window.captureId);
    const choice = choiceOf(question.headerKey, question.guesses, null);
    await exportColumns(window.program, window.captureId, choice, question.guesses);
    const [file] = window.standIn.exported;
    expect(file).toMatchObject({ name: 'twice.csv columns.json', kind: 'json' });
    const fit = choiceFromFile(columnsFileSchema.parse(JSON.parse(String(file?.content))), question);
    expect(fit).toEqual({ ok: true, choice: { ...choice, asWritten: ['secondRecording'] } });
  });
});

describe('the command', () => {
  it('shows what was repaired in the margin; where nothing was it says so', async () => {
    const window = await opened();
    window.program.workspace.getState().set({ rightMargin: false, report: 'vehicle' });
    runCommand(window.program, 'vehicle.repairs');
    expect(window.program.workspace.getState()).toMatchObject({ rightMargin: true, report: 'capture' });
    await openPicked(window.program, [window.file('plain.csv', TWICE.slice(0, TWICE.indexOf('\n0.0', 60)))]);
    await window.quiet();
    runCommand(window.program, 'vehicle.repairs');
    expect(window.program.notices.getState().words).toBe('Nothing had to be repaired when this capture was read.');
  });
});

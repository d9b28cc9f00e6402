import { describe, expect, it } from 'vitest';
import type { ColumnGuess } from '../../../../core/reading/readCapture.ts';
import { columnChoiceSchema } from '../../../../core/record/schema.ts';
import { changeColumns, columnQuestion } from '../../../../renderer/actions/changeColumns.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { previewText } from '../../../../renderer/dialogs/ColumnsDialog.tsx';
import { choiceOf } from '../../../../renderer/dialogs/columnChoice.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { shownCapture } from '../../../../renderer/state/selectors/shown.ts';
import { emptyMemory, startWindow } from '../../../support/windowProgram.ts';

const UNNAMED = [
  'Time,A,B',
  's,V,V',
  ...Array.from({ length: 300 }, (_, i) => `${i / 10},${i % 10 < 5 ? 0.1 : 0.8},0.65`),
].join('\n');

/** The guesses with A as the front sensor and B as the rear one. */
function front(guesses: readonly ColumnGuess[]): ColumnGuess[] {
  return guesses.map((guess) => {
    if (guess.name === 'A') return { ...guess, role: 'upstreamO2', bank: 1, sensor: 1 };
    if (guess.name === 'B') return { ...guess, role: 'downstreamO2', bank: 1, sensor: 2 };
    return guess;
  });
}

describe('columns that are not certain', () => {
  it('are asked for, read anew as chosen, and remembered for the same header', async () => {
    const memory = emptyMemory();
    const window = await startWindow(memory);
    await openPicked(window.program, [window.file('unnamed.csv', UNNAMED)]);
    await window.quiet();
    const { dialog } = window.program.dialogs.getState();
    expect(dialog?.kind).toBe('columns');
    const held = shownCapture(window.program);
    const question = held?.question;
    if (held == null || question == null) throw new Error('nothing was asked');

    const choice = choiceOf(question.headerKey, front(question.guesses), null);
    expect(columnChoiceSchema.safeParse(choice).success).toBe(true);
    expect(await changeColumns(window.program, held.captureId, choice)).toBeNull();
    await window.quiet();
    const roles = () => shownCapture(window.program)?.summary.channels.map(({ role }) => role);
    expect(roles()).toEqual(['upstreamO2', 'downstreamO2']);

    window.program.record.getState().undo();
    await window.quiet();
    expect(roles()).not.toEqual(['upstreamO2', 'downstreamO2']);

    const again = await startWindow(memory);
    await openPicked(again.program, [again.file('other.csv', `${UNNAMED}\n30.0,0.1,0.65`)], 'new');
    await again.quiet();
    expect(again.program.dialogs.getState().dialog).toBeNull();
    expect(shownCapture(again.program)?.summary.channels.map(({ role }) => role)).toEqual([
      'upstreamO2',
      'downstreamO2',
    ]);
    const kept = Object.values(recordOf(again.program.record.getState())?.captures ?? {}).at(-1);
    expect(kept?.columnChoice).toEqual(choice);
  });
});

describe('the question about the columns of a capture', () => {
  it('is refused with the file and what to do where the file cannot be read any more', async () => {
    const window = await startWindow();
    const { program } = window;
    await openPicked(program, [window.file('named.csv', UNNAMED.replace('A,B', 'O2 B1S1,O2 B1S2'))]);
    await window.quiet();
    const captureId = shownCapture(program)?.captureId ?? '';
    program.dialogs.getState().close();
    program.captures.getState().answered(captureId);
    expect((await columnQuestion(program, captureId)).ok).toBe(true);
    program.core.lose(); // nothing answers for the file from now on
    const asking = columnQuestion(program, captureId);
    program.core.lose();
    expect(await asking).toMatchObject({ ok: false, problem: { id: 'coreLost' } });
    expect(await columnQuestion(program, 'gone')).toMatchObject({ ok: false, problem: { id: 'captureNotOpen' } });
  });
});

describe('the preview', () => {
  it('puts the cells of a column under each other', () => {
    expect(
      previewText([
        ['Time', 'Sensor'],
        ['0.1', '0.45'],
      ]),
    ).toBe('Time  Sensor\n0.1   0.45  ');
  });
});

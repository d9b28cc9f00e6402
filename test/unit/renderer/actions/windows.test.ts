import { describe, expect, it, vi } from 'vitest';
import { addTroubleCode } from '../../../../core/record/edits/troubleCodes.ts';
import { removeWindow } from '../../../../core/record/edits/windows.ts';
import { failed } from '../../../../core/service/serviceProblems.ts';
import { CORE_VERSION } from '../../../../core/version.ts';
import { deleteSelected } from '../../../../renderer/actions/deleteSelected.ts';
import { takeReading, writeNote } from '../../../../renderer/actions/notesAndReadings.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { removeCapture } from '../../../../renderer/actions/removeCapture.ts';
import {
  acceptAllOffers,
  acceptOffer,
  dragWindow,
  markWindow,
  offersOfShown,
} from '../../../../renderer/actions/windows.ts';
import { recordOf, undoWordsOf } from '../../../../renderer/state/recordStore.ts';
import { chosenWindow } from '../../../../renderer/state/selectors/shown.ts';
import { startWindow } from '../../../support/windowProgram.ts';

async function openVan() {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  const { program } = window;
  const record = () => {
    const found = recordOf(program.record.getState());
    if (found === null) throw new Error('no vehicle is open');
    return found;
  };
  const windows = () => Object.values(record().windows);
  const undo = (): void => program.record.getState().undo();
  return { ...window, record, windows, undo };
}

describe('an offer', () => {
  it('becomes a window by one deed, is offered no more, and comes back by undo', async () => {
    const { program, windows, undo, quiet } = await openVan();
    const offers = offersOfShown(program);
    const hold = offers.find(({ window }) => window.kind === 'hold');
    acceptOffer(program, hold?.id ?? '');
    await quiet();
    expect(windows().map(({ name, origin }) => [name, origin])).toEqual([['Hold 1', 'accepted']]);
    expect(offersOfShown(program)).toHaveLength(offers.length - 1);
    expect(program.score.getState().score?.windows[0]?.score.kind).toBe('hold');
    expect(undoWordsOf(program.record.getState())).toBe('Undo: accept window');
    undo();
    expect(offersOfShown(program)).toEqual(offers);
  });

  it.each([
    ['van-before', true],
    ['van-after', false],
  ])('of %s is judged with the codes that count when it is accepted', async (name, misfire) => {
    const { program, sample, quiet } = await openVan();
    await openPicked(program, [sample(name)]);
    program.record.getState().edit(addTroubleCode({ id: 't1', code: 'P0300', status: 'confirmed' }));
    const offer = offersOfShown(program).find(({ window }) => window.kind === 'hold');
    program.workspace.getState().select({ kind: 'offer', id: offer?.id ?? '' });
    await quiet();
    const [offered] = program.score.getState().offer?.scores ?? [];
    expect(offered?.blockers.some(({ id }) => id === 'misfire')).toBe(misfire);
    acceptOffer(program, offer?.id ?? '');
    await quiet();
    const { finding, probabilityNotStoring, blockers, conditions, reasons } = offered ?? {};
    const said = { finding, probabilityNotStoring, blockers, conditions, reasons };
    expect(program.score.getState().score?.windows.at(-1)?.score).toMatchObject(said);
  });

  it('is accepted with all others as one step', async () => {
    const { program, windows, undo } = await openVan();
    const count = offersOfShown(program).length;
    acceptAllOffers(program);
    expect(windows()).toHaveLength(count);
    expect(new Set(windows().map(({ name }) => name)).size).toBe(count);
    expect(program.notices.getState().words).toBe(`${count} windows are marked.`);
    undo();
    expect(windows()).toEqual([]);
  });
});

describe('a window', () => {
  it('is marked inside the capture only, and not without a length', async () => {
    const { program, windows } = await openVan();
    markWindow(program, { startS: -20, endS: 10 });
    markWindow(program, { startS: 30, endS: 30 });
    markWindow(program, { startS: 50, endS: 40 });
    expect(windows().map(({ startS, endS, origin }) => [startS, endS, origin])).toEqual([[0, 10, 'byHand']]);
  });

  it('is dragged as one step, and not at all where the drag is abandoned', async () => {
    const { program, windows, undo } = await openVan();
    markWindow(program, { startS: 10, endS: 20 });
    const windowId = windows()[0]?.id ?? '';
    const drag = (endS: number): void =>
      dragWindow(program, { phase: 'move', windowId, stretch: { startS: 10, endS } });
    program.workspace.getState().select(null);
    dragWindow(program, { phase: 'start', windowId });
    expect(program.workspace.getState().selected).toEqual({ kind: 'window', id: windowId });
    for (const endS of [21, 25, 30]) drag(endS);
    dragWindow(program, { phase: 'end', windowId });
    expect(windows()[0]?.endS).toBe(30);
    undo();
    expect(windows()[0]?.endS).toBe(20);

    dragWindow(program, { phase: 'start', windowId });
    drag(90);
    drag(5); // backwards: ignored
    dragWindow(program, { phase: 'abandon', windowId });
    expect(windows()[0]?.endS).toBe(20);
  });

  it('that is deleted gives way to its neighbour and comes back by undo', async () => {
    const { program, windows, undo } = await openVan();
    markWindow(program, { startS: 10, endS: 20 });
    markWindow(program, { startS: 30, endS: 40 });
    deleteSelected(program);
    expect(windows().map(({ startS }) => startS)).toEqual([10]);
    expect(chosenWindow(program)?.startS).toBe(10);
    undo();
    expect(windows().map(({ startS }) => startS)).toEqual([10, 30]);
  });

  it('that undo took away is no longer reported', async () => {
    const { program, undo } = await openVan();
    markWindow(program, { startS: 10, endS: 20 });
    expect(chosenWindow(program)).not.toBeNull();
    undo();
    expect(chosenWindow(program)).toBeNull();
  });
});

describe('findings', () => {
  it('are kept beside the windows they are about, without a step of undo', async () => {
    const { program, record, quiet } = await openVan();
    acceptOffer(program, offersOfShown(program).find(({ window }) => window.kind === 'hold')?.id ?? '');
    await quiet();
    const kept = Object.values(record().findings);
    expect(kept.map(({ windowId }) => windowId === null)).toContain(true);
    expect(kept.some(({ windowId, finding }) => windowId !== null && finding === 'notStoring')).toBe(true);
    expect(new Set(kept.map(({ coreVersion }) => coreVersion))).toEqual(new Set([CORE_VERSION]));
    expect(undoWordsOf(program.record.getState())).toBe('Undo: accept window');
  });

  it('keep the time at which they were first made while they say the same', async () => {
    const { program, record, quiet, clock } = await openVan();
    acceptOffer(program, offersOfShown(program)[0]?.id ?? '');
    await quiet();
    const before = record().findings;
    clock.pass(3_600_000);
    writeNote(program, null, { captureId: null, startS: null, endS: null }, 'An hour later.');
    await quiet();
    expect(record().findings).toEqual(before);
  });

  it('that cannot be worked out are told of, beside the old ones, until they can', async () => {
    const { program, quiet } = await openVan();
    const told = () => program.notices.getState().problems.map(({ place, problem }) => `${place}: ${problem.id}`);
    const { ask } = program.core;
    const refusing: typeof ask = (name, question, options) =>
      name === 'scoreVehicle' ? Promise.resolve(failed(name)) : ask(name, question, options);
    const refused = vi.spyOn(program.core, 'ask').mockImplementation(refusing);
    markWindow(program, { startS: 10, endS: 20 });
    await quiet();
    expect(told()).toEqual(['score: failed']);
    expect(program.score.getState().score).not.toBeNull();
    refused.mockRestore();
    markWindow(program, { startS: 30, endS: 40 });
    await quiet();
    expect(told()).toEqual([]);
  });

  it('go with their window', async () => {
    const { program, record, windows, quiet } = await openVan();
    acceptOffer(program, offersOfShown(program)[0]?.id ?? '');
    await quiet();
    program.record.getState().edit(removeWindow(windows()[0]?.id ?? ''));
    await quiet();
    expect(Object.values(record().findings).filter(({ windowId }) => windowId !== null)).toEqual([]);
  });
});

describe('a temperature pair', () => {
  it('keeps the unit it was typed in and is read with the traces', async () => {
    const { program, record, quiet } = await openVan();
    takeReading(program, {
      inlet: { value: 500, unit: 'F' },
      outlet: { value: 384, unit: 'F' },
      bank: 1,
      brick: null,
      rpm: 2300,
      emissivity: 0.95,
      captureId: null,
    });
    await quiet();
    expect(Object.values(record().readings)[0]?.inlet).toEqual({ value: 500, unit: 'F' });
    // 500 °F is 260 °C, 384 °F is 195.6 °C: a fall of 64.4 K.
    expect(program.score.getState().score?.thermal[0]?.reading.riseC).toBeCloseTo(-64.4, 1);
  });
});

describe('a note', () => {
  it('is one step as long as it is typed without leaving it', async () => {
    const { program, record, undo } = await openVan();
    const id = writeNote(program, null, { captureId: null, startS: null, endS: null }, 'Rattles');
    writeNote(program, id, { captureId: null, startS: null, endS: null }, 'Rattles when cold');
    program.record.getState().seal();
    expect(record().notes[id]?.text).toBe('Rattles when cold');
    undo();
    expect(record().notes[id]).toBeUndefined();
  });
});

describe('a capture that is taken off', () => {
  it('takes what was marked on it along, and undo brings all back', async () => {
    const { program, record, undo, quiet } = await openVan();
    markWindow(program, { startS: 10, endS: 20 });
    await quiet();
    const before = record();
    const captureId = Object.keys(before.captures)[0] ?? '';
    removeCapture(program, captureId);
    expect(record().captures).toEqual({});
    expect(record().windows).toEqual({});
    expect(program.workspace.getState().captureId).toBeNull();
    undo();
    expect(record().windows).toEqual(before.windows);
    expect(program.workspace.getState().captureId).toBe(captureId);
  });
});

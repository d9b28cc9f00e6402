// A colleague's bundle that is read blind first: what the second reader sees, until they sign or look.

import { describe, expect, it } from 'vitest';
import { NOTHING_PRIVATE } from '../../../../core/evidence/sheetInput.ts';
import { checkOpinions } from '../../../../core/opinions/chain.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { lookNow } from '../../../../renderer/actions/blindReading.ts';
import { exportBundle } from '../../../../renderer/actions/exportBundle.ts';
import { makePicture } from '../../../../renderer/actions/makePicture.ts';
import { makeSheet } from '../../../../renderer/actions/makeSheet.ts';
import { writeNote } from '../../../../renderer/actions/notesAndReadings.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { goBackTo, openVehicle } from '../../../../renderer/actions/openVehicle.ts';
import { type OpinionDraft, signOpinion } from '../../../../renderer/actions/opinions.ts';
import { takeBundle } from '../../../../renderer/actions/receiveBundles.ts';
import { removeCapture } from '../../../../renderer/actions/removeCapture.ts';
import { acceptAllOffers, markWindow, offersOfShown } from '../../../../renderer/actions/windows.ts';
import { DEEDS } from '../../../../renderer/commands/index.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { NO_SCORE } from '../../../../renderer/state/scoreStore.ts';
import { nodeSha256 } from '../../../support/signedChain.ts';
import { emptyMemory, startWindow, type TestWindow } from '../../../support/windowProgram.ts';

const DRAFT: OpinionDraft = {
  author: { name: 'FIRSTCANARY', licence: '' },
  finding: 'notStoring',
  confidence: 85,
  reasons: 'REASONCANARY',
  nextTest: 'TESTCANARY',
  answers: null,
  disagreement: null,
  windowIds: [],
};
const MINE: OpinionDraft = { ...DRAFT, author: { name: 'B', licence: '' }, reasons: 'Mine.', nextTest: '' };

function shownIn({ program }: TestWindow): VehicleRecord {
  const record = recordOf(program.record.getState());
  if (record === null) throw new Error('no vehicle is open');
  return record;
}

/** The record as the shell keeps it: all of it. */
async function keptIn(window: TestWindow): Promise<VehicleRecord> {
  await window.program.saver.flush();
  const loaded = await window.program.shell.loadVehicle({ id: shownIn(window).id });
  if (!loaded.ok) throw new Error('the vehicle is not kept');
  return loaded.record;
}

/** What the first reader came to, in a bundle. */
async function bundle(): Promise<Uint8Array> {
  const first = await startWindow();
  const { program } = first;
  await openPicked(program, [first.sample('van-before')]);
  await first.quiet();
  acceptAllOffers(program);
  writeNote(program, null, { captureId: null, startS: null, endS: null }, 'NOTECANARY');
  await first.quiet();
  const windowIds = Object.keys(shownIn(first).windows);
  await signOpinion(program, { ...DRAFT, windowIds });
  await exportBundle(program, NOTHING_PRIVATE, Object.keys(shownIn(first).captures));
  const content = first.standIn.exported.at(-1)?.content;
  if (!(content instanceof Uint8Array)) throw new Error('no bundle was written');
  return content;
}

async function second(blind: boolean, memory = emptyMemory()): Promise<TestWindow> {
  const window = await startWindow(memory);
  // Ids of the stand-in are counted: those of the first reader are not to come again.
  for (let taken = 0; taken < 1000; taken++) window.program.newId();
  await openPicked(window.program, [window.file('van.zip', await bundle())]);
  const { dialog } = window.program.dialogs.getState();
  if (dialog?.kind !== 'received') throw new Error('no bundle is shown');
  expect(await takeBundle(window.program, dialog.bundles[0], blind)).toBe(true);
  await window.quiet();
  return window;
}

const reasonAgainst = ({ program }: TestWindow, id: string) => DEEDS.get(id)?.state(program).reason;

describe('H1: a bundle that is read blind first', () => {
  it('shows captures and vehicle, and neither what the first reader came to nor what the program says', async () => {
    const window = await second(true);
    const { program } = window;
    const shown = shownIn(window);
    expect(Object.keys(shown.captures)).toHaveLength(1);
    expect(shown).toMatchObject({ windows: {}, notes: {}, findings: {}, opinions: {} });
    expect(JSON.stringify(shown)).not.toContain('CANARY');
    expect(program.score.getState()).toEqual(NO_SCORE);
    expect(offersOfShown(program)).toEqual([]);
    expect(Object.values(program.captures.getState().held).map(({ offers }) => offers)).toEqual([[]]);
  });

  it('hands over no sheet and no bundle, and says why; a picture holds only what is shown', async () => {
    const window = await second(true);
    const { program, standIn } = window;
    const before = standIn.exported.length;
    const commands = ['file.exportSheet', 'file.print', 'file.exportBundle', 'vehicle.opinions', 'window.compare'];
    for (const id of [...commands, 'window.acceptAll', 'view.ghosts'])
      expect(reasonAgainst(window, id), id).toBe('You are reading blind: sign your opinion first, or look now.');
    expect(await makeSheet(program, NOTHING_PRIVATE)).toBeNull();
    expect(await exportBundle(program, NOTHING_PRIVATE, [])).toBeNull();
    expect(standIn.exported).toHaveLength(before);
    markWindow(program, { startS: 60, endS: 90 });
    await window.quiet();
    const words = (await makePicture(program))?.replaceAll(/<path[^>]*>/g, '');
    expect(words).toMatch(/Stretch.1/);
    expect(words).not.toMatch(/(Hold|Idle|Cruise|Snap).\d|CANARY|stor/);
  });

  it('keeps the whole record, with what the second reader adds, through a restart', async () => {
    const memory = emptyMemory();
    const window = await second(true, memory);
    const hidden = await keptIn(window);
    expect(JSON.stringify(hidden)).toMatch(/NOTECANARY.*REASONCANARY/s);
    markWindow(window.program, { startS: 60, endS: 90 });
    writeNote(window.program, null, { captureId: null, startS: null, endS: null }, 'Mine.');
    removeCapture(window.program, Object.keys(hidden.captures)[0] ?? '');
    await window.quiet();
    const kept = await keptIn(window);
    expect(kept).toMatchObject({
      captures: hidden.captures,
      windows: hidden.windows,
      notes: hidden.notes,
      opinions: hidden.opinions,
    });
    expect(Object.keys(kept.windows)).toHaveLength(Object.keys(hidden.windows).length + 1);
    const again = await startWindow(memory);
    await again.quiet();
    expect(Object.values(shownIn(again).windows).map(({ name }) => name)).toEqual(['Stretch 1']);
    expect(Object.values(shownIn(again).notes).map(({ text }) => text)).toEqual(['Mine.']);
    expect(again.program.score.getState()).toEqual(NO_SCORE);
  });

  it('ends with an opinion that says so, rests on windows of its own, and goes on from the same chain', async () => {
    const window = await second(true);
    const { program } = window;
    markWindow(program, { startS: 60, endS: 90 });
    await window.quiet();
    const id = await signOpinion(program, { ...MINE, windowIds: Object.keys(shownIn(window).windows) });
    await window.quiet();
    const record = shownIn(window);
    expect(record.opinions[id]).toMatchObject({
      reading: { startedAt: record.blindReading?.startedAt, lookedAt: null },
      windows: [{ startS: 60, endS: 90 }],
    });
    expect(JSON.stringify(record)).toMatch(/NOTECANARY.*REASONCANARY/s);
    const links = await checkOpinions(record, nodeSha256);
    expect(links.map(({ state, sameRecord }) => [state, sameRecord])).toEqual([
      ['whole', false], // the second reader's window came after it
      ['whole', true],
    ]);
    expect(program.score.getState().score?.windows.length).toBe(Object.keys(record.windows).length);
    expect(offersOfShown(program)).toEqual([]); // the first reader has accepted them all
    expect(Object.values(program.captures.getState().held)[0]?.offers.length).toBeGreaterThan(0);
    expect(reasonAgainst(window, 'file.exportSheet')).toBeNull();
  });

  it('ends with a look, which is kept with its time and in the opinion that is signed after it', async () => {
    const window = await second(true);
    await lookNow(window.program);
    await window.quiet();
    const { blindReading } = await keptIn(window);
    expect(blindReading?.lookedAt).not.toBeNull();
    expect(JSON.stringify(shownIn(window))).toContain('REASONCANARY');
    expect(reasonAgainst(window, 'vehicle.look')).toBe('Nothing is hidden in this vehicle.');
    const id = await signOpinion(window.program, MINE);
    expect(shownIn(window).opinions[id]).toMatchObject({ reading: { lookedAt: blindReading?.lookedAt } });
  });

  it('stays seen when its reader goes back to a save from before the look', async () => {
    const window = await second(true);
    const before = await keptIn(window);
    await lookNow(window.program);
    const { blindReading } = await keptIn(window);
    const { shell } = window.program;
    const restoreVehicle: typeof shell.restoreVehicle = async ({ id }) => {
      await shell.saveVehicle({ record: before });
      return shell.loadVehicle({ id });
    };
    await goBackTo({ ...window.program, shell: { ...shell, restoreVehicle } }, 'an earlier one');
    await window.quiet();
    expect((await keptIn(window)).blindReading).toEqual(blindReading);
  });

  it('hides nothing of another vehicle that is opened next', async () => {
    const window = await second(true);
    const { id } = shownIn(window);
    await openPicked(window.program, [window.sample('road-drive')]);
    await window.quiet();
    expect(offersOfShown(window.program).length).toBeGreaterThan(0);
    await openVehicle(window.program, id);
    await window.quiet();
    expect(offersOfShown(window.program)).toEqual([]);
  });
});

describe('a bundle of which everything is seen at once', () => {
  it('is as it was, and its reader’s opinion says nothing of a blind reading', async () => {
    const window = await second(false);
    expect(shownIn(window).blindReading).toBeNull();
    expect(JSON.stringify(shownIn(window))).toMatch(/NOTECANARY.*REASONCANARY/s);
    const id = await signOpinion(window.program, MINE);
    expect(shownIn(window).opinions[id]).not.toHaveProperty('reading');
  });
});

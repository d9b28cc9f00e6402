// A bundle between two windows: written in one, opened in another.

import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { manifestSchema } from '../../../../core/evidence/bundle/manifest.ts';
import { NOTHING_PRIVATE } from '../../../../core/evidence/sheetInput.ts';
import { checkOpinions } from '../../../../core/opinions/chain.ts';
import { canonicalJson } from '../../../../core/record/canonical.ts';
import { setIdentity } from '../../../../core/record/edits/vehicle.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { CORE_VERSION } from '../../../../core/version.ts';
import { exportBundle, weighCaptures } from '../../../../renderer/actions/exportBundle.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { openVehicle } from '../../../../renderer/actions/openVehicle.ts';
import { signOpinion, withdrawOpinion } from '../../../../renderer/actions/opinions.ts';
import { showReceived, takeBundle, takeOpinions } from '../../../../renderer/actions/receiveBundles.ts';
import { acceptAllOffers } from '../../../../renderer/actions/windows.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { nodeSha256 } from '../../../support/signedChain.ts';
import { startWindow, type TestWindow } from '../../../support/windowProgram.ts';

const PRIVATE = { plate: 'PLATECANARY', customer: 'CUSTOMERCANARY', complaint: 'COMPLAINTCANARY' };

function vehicleOf({ program }: TestWindow): VehicleRecord {
  const record = recordOf(program.record.getState());
  if (record === null) throw new Error('no vehicle is open');
  return record;
}

/** A window with a scored vehicle, and the bundle it wrote. */
async function written(captures: 'with' | 'without' = 'with') {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  acceptAllOffers(window.program);
  window.program.record.getState().edit(setIdentity(PRIVATE));
  await window.quiet();
  const ids = captures === 'with' ? Object.keys(vehicleOf(window).captures) : [];
  const made = await exportBundle(window.program, NOTHING_PRIVATE, ids);
  const content = window.standIn.exported.at(-1)?.content;
  if (made === null || !(content instanceof Uint8Array)) throw new Error('no bundle was written');
  return { window, made, bytes: content };
}

async function bundleOf({ program, standIn }: TestWindow): Promise<Uint8Array> {
  await exportBundle(program, NOTHING_PRIVATE, []);
  const content = standIn.exported.at(-1)?.content;
  if (!(content instanceof Uint8Array)) throw new Error('no bundle was written');
  return content;
}

function receivedIn({ program }: TestWindow) {
  const { dialog } = program.dialogs.getState();
  if (dialog?.kind !== 'received') throw new Error('no bundle is shown');
  return dialog.bundles;
}

const textOf = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

describe('a bundle that is written', () => {
  it('holds captures, record and sheet, and nothing private', async () => {
    const { window, made, bytes } = await written();
    const files = unzipSync(bytes);
    const everything = Object.values(files).map(textOf).join('\n');
    expect(everything).not.toMatch(/CANARY/);
    expect(everything).toContain('For privacy this copy leaves out');
    expect(made.name).toBe('Van 14 (invented).tailtrace-bundle');
    expect(window.program.notices.getState().words).toBe('Van 14 (invented).tailtrace-bundle was written.');
  });

  it('has on its sheet the hash of the very record that lies beside it', async () => {
    const { bytes } = await written();
    const files = unzipSync(bytes);
    const { recordCanonicalSha256 } = manifestSchema.parse(JSON.parse(textOf(files['manifest.json'])));
    expect(textOf(files['sheet.html'])).toContain(recordCanonicalSha256);
  });

  it('tells which captures can go in', async () => {
    const { window } = await written();
    const [capture] = Object.values(vehicleOf(window).captures);
    if (capture === undefined) throw new Error('no capture');
    const weighed = await weighCaptures(window.program, [capture, { ...capture, id: 'gone', sha256: 'ab'.repeat(32) }]);
    expect([...(weighed?.values() ?? [])].map(({ state }) => state)).toEqual(['ready', 'notFound']);
  });
});

describe('a bundle that is opened', () => {
  it('is looked at first, and taken in as the vehicle it was, with its findings and traces', async () => {
    const { window: sender, made, bytes } = await written();
    const there = await startWindow();
    await openPicked(there.program, [there.file('van.zip', bytes)]);
    expect(recordOf(there.program.record.getState())).toBeNull();
    const [received] = receivedIn(there);
    const windows = Object.keys(vehicleOf(sender).windows).length;
    expect(windows).toBeGreaterThan(0);
    expect(received).toMatchObject({ here: 'nothing', manifestSha256: made.manifestSha256, windows });
    expect(await takeBundle(there.program, received, false)).toBe(true);
    await there.quiet();
    const sent = vehicleOf(sender);
    const identity = { ...sent.identity, plate: '', customer: '', complaint: '' };
    expect(canonicalJson(vehicleOf(there))).toBe(canonicalJson({ ...sent, identity }));
    expect(Object.keys(there.program.captures.getState().held)).toEqual(Object.keys(sent.captures));
    expect(there.program.score.getState().score).toEqual(sender.program.score.getState().score);
  });

  it('T-EV-3: whose findings another version of the core made shows them beside those made here', async () => {
    const { window: sender, bytes } = await written();
    const made = vehicleOf(sender).findings.vehicle;
    if (made === undefined) throw new Error('no finding was kept');
    const there = await startWindow();
    await openPicked(there.program, [there.file('van.zip', bytes)]);
    await takeBundle(there.program, receivedIn(there)[0], false);
    await there.quiet();
    expect(there.program.score.getState().byOtherCore).toEqual({});
    const other = { ...made, coreVersion: '0.0.9', sentence: 'It stores.' };
    const record = { ...vehicleOf(there), id: 'elsewhere', findings: { vehicle: other } };
    await there.program.shell.saveVehicle({ record });
    await openVehicle(there.program, 'elsewhere');
    await there.quiet();
    expect(there.program.score.getState().byOtherCore).toEqual({ vehicle: other });
    expect(vehicleOf(there).findings.vehicle).toMatchObject({ coreVersion: CORE_VERSION, sentence: made.sentence });
  });

  it('comes beside a vehicle that is there', async () => {
    const { window, bytes } = await written();
    const mine = vehicleOf(window);
    await openPicked(window.program, [window.file('van.tailtrace-bundle', bytes)]);
    const [received] = receivedIn(window);
    expect(received.here).toBe('other');
    expect(await takeBundle(window.program, received, false)).toBe(true);
    await window.quiet();
    expect(vehicleOf(window).identity.name).toBe('Van 14 (invented) (received 2026-11-24)');
    const loaded = await window.program.shell.loadVehicle({ id: mine.id });
    expect(loaded.ok && loaded.record).toEqual(mine);
  });

  it('brings what was signed elsewhere into the vehicle here, which stays as it is, and the chain is whole', async () => {
    const { window: first } = await written();
    const opinion = { author: { name: 'A', licence: '' }, finding: 'weak' as const, confidence: 60, reasons: '' };
    const draft = { ...opinion, nextTest: '', answers: null, disagreement: null, windowIds: [] };
    await signOpinion(first.program, draft);
    const second = await startWindow();
    await openPicked(second.program, [second.file('to.zip', await bundleOf(first))]);
    await takeBundle(second.program, receivedIn(second)[0], false);
    await second.quiet();
    const answers = Object.keys(vehicleOf(second).opinions)[0] ?? '';
    const author = { name: 'B', licence: '' };
    await signOpinion(second.program, { ...draft, author, answers, finding: 'cannotTell' });
    await withdrawOpinion(second.program, { withdraws: answers, author, reason: 'By agreement.' });

    const mine = vehicleOf(first);
    const back = await bundleOf(second);
    await openPicked(first.program, [first.file('back.zip', back)]);
    const [received] = receivedIn(first);
    expect(received).toMatchObject({ here: 'other', opinions: 3, vehicleId: mine.id });
    expect(received.newOpinions.map(({ kind, author: by }) => [kind, by.name])).toEqual([
      ['opinion', 'B'],
      ['withdrawal', 'B'],
    ]);
    expect(await takeOpinions(first.program, received)).toBe(true);
    await first.quiet();
    const { opinions, ...rest } = vehicleOf(first);
    expect({ ...rest, opinions: mine.opinions }).toEqual(mine);
    expect(opinions).toEqual(vehicleOf(second).opinions);
    expect((await checkOpinions(vehicleOf(first), nodeSha256)).map(({ state }) => state)).toEqual(
      Array(3).fill('whole'),
    );
    first.program.record.getState().undo();
    expect(vehicleOf(first).opinions).toBe(opinions);
    const loaded = await first.program.shell.loadVehicle({ id: mine.id });
    expect(loaded.ok && loaded.record.opinions).toEqual(opinions);

    // A second time there is nothing new, and after something was signed here it no longer continues.
    await openPicked(first.program, [first.file('again.zip', back)]);
    expect(receivedIn(first)[0].newOpinions).toEqual([]);
    expect(await takeOpinions(first.program, received)).toBe(false);
    expect(first.program.notices.getState().problems).toMatchObject([{ problem: { id: 'bundle.notContinued' } }]);
    expect(vehicleOf(first).opinions).toBe(opinions);
  });

  it('is refused where it was changed, and the work at hand stays', async () => {
    const { window, bytes } = await written();
    const mine = vehicleOf(window);
    const cut = bytes.subarray(0, bytes.length - 30);
    await openPicked(window.program, [window.file('van.tailtrace-bundle', cut)]);
    const [told] = window.program.notices.getState().problems;
    expect(told).toMatchObject({ place: 'open', problem: { id: 'bundle.cut', where: 'van.tailtrace-bundle' } });
    expect(window.program.dialogs.getState().dialog).toBeNull();
    expect(window.program.captures.getState().jobs).toEqual([]);
    expect(vehicleOf(window)).toBe(mine);
  });

  it('waits its turn where several are opened', async () => {
    const { bytes } = await written();
    const { bytes: empty } = await written('without');
    const there = await startWindow();
    await openPicked(there.program, [there.file('one.zip', bytes), there.file('two.zip', empty)]);
    const [first, ...others] = receivedIn(there);
    expect([first, ...others].map(({ name }) => name)).toEqual(['one.zip', 'two.zip']);
    expect(others[0]?.captures).toMatchObject([{ name: 'van-before.csv', enclosed: false }]);
    showReceived(there.program, others);
    expect(receivedIn(there)[0].name).toBe('two.zip');
    showReceived(there.program, []);
    expect(there.program.dialogs.getState().dialog).toBeNull();
  });
});

import { expect, it } from 'vitest';
import { startBlindReading } from '../../../../../core/record/blindReading.ts';
import { openPicked } from '../../../../../renderer/actions/openCaptures.ts';
import { acceptOffer, markWindow, offersOfShown } from '../../../../../renderer/actions/windows.ts';
import { recordOf } from '../../../../../renderer/state/recordStore.ts';
import { offeredInstead } from '../../../../../renderer/state/selectors/offeredInstead.ts';
import { startWindow, type TestWindow } from '../../../../support/windowProgram.ts';

const said = ({ program }: TestWindow): string | null =>
  offeredInstead(program.score.getState().score, program.captures.getState().held, recordOf(program.record.getState()));

/** A sample drive with its offers, of which the first that is (or is no) hold or cruise is accepted. */
async function withAccepted(steady: boolean): Promise<TestWindow> {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  const offers = offersOfShown(window.program);
  const chosen = offers.find((one) => ['hold', 'cruise'].includes(one.window.kind) === steady);
  if (chosen === undefined) throw new Error('no such offer');
  acceptOffer(window.program, chosen.id);
  await window.quiet();
  return window;
}

it('points to the steady stretches on offer while only other kinds of windows are accepted', async () => {
  const window = await withAccepted(false);
  const steady = offersOfShown(window.program).filter(({ window: { kind } }) => kind === 'hold' || kind === 'cruise');
  expect(window.program.score.getState().score?.before.verdict.finding).toBe('cannotTell');
  expect(said(window)?.replaceAll('\u00a0', ' ')).toContain(
    steady.length === 1 ? '1 steady stretch at' : `${steady.length} steady stretches at`,
  );
});

it('points to them as well where an idle was marked by hand, which is of no kind until it is judged', async () => {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  const idle = offersOfShown(window.program).find((one) => one.window.kind === 'idle');
  if (idle === undefined) throw new Error('no idle on offer');
  markWindow(window.program, { startS: idle.window.startS + 1, endS: idle.window.endS - 1 });
  await window.quiet();
  expect(said(window)).toContain('on offer');
});

it('says nothing to who reads blind', async () => {
  const { program } = await withAccepted(false);
  const record = recordOf(program.record.getState());
  if (record === null) throw new Error('no vehicle is open');
  const { score } = program.score.getState();
  const { held } = program.captures.getState();
  expect(offeredInstead(score, held, record)).not.toBeNull();
  expect(offeredInstead(score, held, startBlindReading(record, '2026-11-25T08:00:00+01:00'))).toBeNull();
});

it('says nothing of its own before anything is judged', async () => {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  expect(said(window)).toBeNull();
});

it('says nothing of its own once one is accepted, or where none is on offer', async () => {
  expect(said(await withAccepted(true))).toBeNull();
  const window = await withAccepted(false);
  const { captures, record, score } = window.program;
  const held = Object.fromEntries(
    Object.entries(captures.getState().held).map(([id, one]) => [id, { ...one, offers: [] }]),
  );
  expect(offeredInstead(score.getState().score, held, recordOf(record.getState()))).toBeNull();
});

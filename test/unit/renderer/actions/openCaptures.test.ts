import { describe, expect, it } from 'vitest';
import { titleOf } from '../../../../renderer/actions/keepTitle.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { tracesSettled } from '../../../../renderer/plot/settled.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { shownCapture, shownView } from '../../../../renderer/state/selectors/shown.ts';
import { emptyMemory, startWindow, type TestWindow } from '../../../support/windowProgram.ts';

const PLAIN = ['Time,O2S B1S1,O2S B1S2', 's,V,V', ...rows(200)].join('\n');

function rows(count: number): string[] {
  return Array.from({ length: count }, (_, i) => `${(i / 10).toFixed(1)},${i % 10 < 5 ? '0.1' : '0.8'},0.65`);
}

function vehicleOf({ program }: TestWindow) {
  const record = recordOf(program.record.getState());
  if (record === null) throw new Error('no vehicle is open');
  return record;
}

describe('a sample drive', () => {
  it('opens as a vehicle of its own, with its finding to read at once', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    const vehicle = vehicleOf(window);
    expect(vehicle.identity.name).toBe('Van 14 (invented)');
    expect(Object.values(vehicle.captures).map(({ kind, sample }) => ({ kind, sample }))).toEqual([
      { kind: 'before', sample: true },
    ]);
    expect(Object.values(vehicle.windows)).toEqual([]);
    const { offer } = window.program.score.getState();
    expect(offer?.scores?.map(({ kind, finding }) => ({ kind, finding }))).toEqual([
      { kind: 'hold', finding: 'notStoring' },
    ]);
    expect(titleOf(window.program)).toBe('Van 14 (invented) – van-before.csv – Tailtrace');
  });

  it('is not settled while its offers are still worked out', async () => {
    const window = await startWindow();
    const { captures } = window.program;
    const settled: boolean[] = [];
    captures.subscribe(({ held }) => {
      if (Object.values(held).some(({ offers }) => offers.length === 0))
        queueMicrotask(() => settled.push(tracesSettled()));
    });
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    expect(settled.length).toBeGreaterThan(0);
    expect(settled).not.toContain(true);
    expect(tracesSettled()).toBe(true);
  });

  it('joins the vehicle of its own story', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.sample('van-before'), window.sample('van-after')]);
    await window.quiet();
    expect(Object.values(vehicleOf(window).captures).map(({ kind }) => kind)).toEqual(['before', 'after']);
  });

  it('never mixes with a real vehicle', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.file('bay-3.csv', PLAIN)]);
    const real = vehicleOf(window).id;
    await openPicked(window.program, [window.sample('van-before')]);
    expect(vehicleOf(window).id).not.toBe(real);
    await openPicked(window.program, [window.file('bay-4.csv', `${PLAIN}\n20.0,0.1,0.65`)]);
    const names = Object.values(vehicleOf(window).captures).map(({ name }) => name);
    expect(names).toEqual(['bay-4.csv']);
  });
});

describe('files of one’s own', () => {
  it('that cannot be opened each say so, and the next files that are opened take that away', async () => {
    const window = await startWindow();
    const { program } = window;
    const told = () => program.notices.getState().problems.map(({ problem }) => problem.where);
    await openPicked(program, [
      window.file('one.csv', ''),
      window.file('two.png', '\x89PNG'),
      window.file('bay-3.csv', PLAIN),
    ]);
    expect(told()).toEqual(['one.csv', 'two.png']);
    await openPicked(program, [window.file('bay-4.csv', `${PLAIN}\n20.0,0.1,0.65`)]);
    expect(told()).toEqual([]);
  });

  it('begin a vehicle named after the first, and join it afterwards', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.file('bay-3.csv', PLAIN)]);
    await openPicked(window.program, [window.file('after.csv', `${PLAIN}\n20.0,0.1,0.65`)]);
    const vehicle = vehicleOf(window);
    expect(vehicle.identity.name).toBe('bay-3');
    expect(Object.values(vehicle.captures).map(({ name, kind }) => [name, kind])).toEqual([
      ['bay-3.csv', 'before'],
      ['after.csv', 'after'],
    ]);
  });

  it('are taken once, also under another name', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.file('a.csv', PLAIN), window.file('copy of a.csv', PLAIN)]);
    expect(Object.keys(vehicleOf(window).captures)).toHaveLength(1);
  });

  it('that cannot be read say so and leave the rest as it was', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.file('good.csv', PLAIN)]);
    const before = vehicleOf(window);
    await openPicked(window.program, [window.file('empty.csv', '')]);
    const [told] = window.program.notices.getState().problems;
    expect(told?.place).toBe('open');
    expect(told?.problem.where).toContain('empty.csv');
    expect(vehicleOf(window)).toBe(before);
    expect(shownCapture(window.program)?.summary.name).toBe('good.csv');
  });

  it('make no vehicle where the only one of them cannot be read', async () => {
    const window = await startWindow();
    await openPicked(window.program, [
      window.file('picture.png', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10])),
    ]);
    expect(recordOf(window.program.record.getState())).toBeNull();
    expect(window.program.shelf.getState().vehicles).toEqual([]);
  });

  it('whose reading is cancelled leave nothing and are no error', async () => {
    const window = await startWindow();
    const opening = openPicked(window.program, [window.file('long.csv', PLAIN)]);
    window.program.captures.getState().jobs[0]?.cancel();
    await opening;
    expect(window.program.captures.getState().jobs).toEqual([]);
    expect(window.program.notices.getState().problems).toEqual([]);
    expect(window.program.notices.getState().words).toBe('Opening long.csv was cancelled.');
    expect(recordOf(window.program.record.getState())).toBeNull();
  });
});

describe('after a restart', () => {
  it('everything is found as it was left', async () => {
    const memory = emptyMemory();
    const first = await startWindow(memory);
    await openPicked(first.program, [first.sample('van-before')]);
    await first.quiet();
    first.program.workspace.getState().look({ startS: 100, endS: 130 }, true);
    first.program.workspace.getState().cursor(111.5);
    first.program.workspace.getState().set({ rightMargin: false });
    first.clock.pass(2000);
    await first.quiet();

    const second = await startWindow(memory);
    expect(vehicleOf(second)).toEqual(vehicleOf(first));
    expect(shownView(second.program)).toEqual(shownView(first.program));
    expect(second.program.workspace.getState().rightMargin).toBe(false);
    expect(shownCapture(second.program)?.summary.sha256).toBe(shownCapture(first.program)?.summary.sha256);
  });

  it('a capture that is gone is missed, and everything else stays', async () => {
    const memory = emptyMemory();
    const first = await startWindow(memory);
    await openPicked(first.program, [first.file('bay-3.csv', PLAIN)]);
    await first.quiet();
    const second = await startWindow(memory); // the stand-in of this start has no such file
    const [missing] = Object.values(second.program.captures.getState().missing);
    expect(missing?.why).toBe('notFound');
    expect(Object.values(vehicleOf(second).captures).map(({ name }) => name)).toEqual(['bay-3.csv']);
  });
});

import { describe, expect, it } from 'vitest';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { showBeginning } from '../../../../renderer/actions/showBeginning.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { shownCapture } from '../../../../renderer/state/selectors/shown.ts';
import { startWindow, type TestWindow } from '../../../support/windowProgram.ts';

const ROWS = 600_000;

/** Rows of one width, so that the bytes of any number of them can be told by hand: 13 and a line end. */
function longFile(window: TestWindow, name: string) {
  const rows = Array.from(
    { length: ROWS },
    (_, i) => `${(i / 100).toFixed(2).padStart(8, '0')},${i % 10 < 5 ? '0.10' : '0.80'}\n`,
  );
  return window.file(name, `Time (s),O2 B1S1 (V)\n${rows.join('')}`);
}

function seen(window: TestWindow): (string | null)[] {
  const names: (string | null)[] = [null];
  window.program.captures.subscribe(({ beginning }) => {
    const name = beginning?.outline.name ?? null;
    if (names.at(-1) !== name) names.push(name);
  });
  return names;
}

describe('the beginning of a long file', () => {
  it('is shown while the whole is read, and let go when the whole is there', async () => {
    const window = await startWindow();
    const names = seen(window);
    const rowsThen: number[] = [];
    window.program.captures.subscribe(({ beginning, held }) => {
      if (beginning !== null && Object.keys(held).length === 0) rowsThen.push(beginning.outline.rows);
    });
    await openPicked(window.program, [longFile(window, 'long.csv')]);
    await window.quiet();
    expect(names).toEqual([null, 'long.csv', null]);
    expect(rowsThen[0]).toBe(Math.floor((2 * 1024 * 1024 - 'Time (s),O2 B1S1 (V)\n'.length) / 14));
    expect(shownCapture(window.program)?.summary.rows).toBe(ROWS);
  });

  it('is never drawn beside the whole, nor in the vehicle that opens with it', async () => {
    const window = await startWindow();
    const { captures, record } = window.program;
    const drawn: string[] = [];
    // What is drawn is what stands when a deed is over, not what stands in its midst.
    const look = (): void => {
      const { beginning, held } = captures.getState();
      const names = [
        ...(beginning === null ? [] : ['beginning']),
        ...(Object.keys(held).length === 0 ? [] : ['whole']),
        ...(recordOf(record.getState()) === null ? [] : ['vehicle']),
      ];
      if (names.length > 0 && drawn.at(-1) !== names.join()) drawn.push(names.join());
    };
    captures.subscribe(() => queueMicrotask(look));
    record.subscribe(() => queueMicrotask(look));
    await openPicked(window.program, [longFile(window, 'long.csv')]);
    await window.quiet();
    expect(drawn).toEqual(['beginning', 'whole,vehicle']);
  });

  it('is not shown of a file that is read before anybody could look', async () => {
    const window = await startWindow();
    const names = seen(window);
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    expect(names).toEqual([null]);
  });

  it('goes with its own file only, not with another that is shown by then', async () => {
    const window = await startWindow();
    const { captures } = window.program;
    const first = longFile(window, 'first.csv');
    const second = longFile(window, 'second.csv');
    const firstOver = showBeginning(window.program, first);
    await until(window, 'first.csv');
    const secondOver = showBeginning(window.program, second);
    await until(window, 'second.csv');
    firstOver();
    expect(captures.getState().beginning?.outline.name).toBe('second.csv');
    secondOver();
    expect(captures.getState().beginning).toBeNull();
  });

  it('that comes after the reading was cancelled is not shown', async () => {
    const window = await startWindow();
    const names = seen(window);
    showBeginning(window.program, longFile(window, 'late.csv'))();
    await window.quiet();
    expect(names).not.toContain('late.csv');
  });
});

function until({ program: { captures } }: TestWindow, name: string): Promise<void> {
  return new Promise((resolve) => {
    const stop = captures.subscribe(({ beginning }) => {
      if (beginning?.outline.name !== name) return;
      stop();
      resolve();
    });
  });
}

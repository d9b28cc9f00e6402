import { describe, expect, it } from 'vitest';
import { look, questionUnderWay, tracesSettled, whenTracesSettled } from '../../../../renderer/plot/settled.ts';

describe('whether everything asked for is drawn', () => {
  it('is so at once where nothing is under way', async () => {
    expect(tracesSettled()).toBe(true);
    await whenTracesSettled();
  });

  it('is not so until every question has come back, each counted once', async () => {
    const [one, other] = [questionUnderWay(), questionUnderWay()];
    let settled = false;
    const waiting = whenTracesSettled().then(() => {
      settled = true;
    });
    one();
    one();
    await Promise.resolve();
    expect([tracesSettled(), settled]).toEqual([false, false]);
    other();
    await waiting;
    expect([tracesSettled(), settled]).toEqual([true, true]);
  });

  it('lets nobody wait twice', async () => {
    const over = questionUnderWay();
    const both = Promise.all([whenTracesSettled(), whenTracesSettled()]);
    over();
    look();
    await both;
  });
});

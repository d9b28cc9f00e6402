import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinCrowds, TOGETHER_PX } from '../../../../renderer/plot/crowds.ts';
import type { ShownWindow } from '../../../../renderer/plot/traceStackProps.ts';

const offer = (id: string, startS: number, endS = startS + 5): ShownWindow => ({
  id,
  name: 'Idle, bank 1',
  startS,
  endS,
  finding: null,
  offer: true,
});
const marked = (id: string, startS: number): ShownWindow => ({ ...offer(id, startS), name: id, offer: false });
const names = (windows: readonly { readonly name: string; readonly id: string }[]) =>
  windows.map(({ name, id }) => (/(offers|windows)$/.test(name) ? name : id));

describe('crowded windows and offers', () => {
  const four = [offer('a', 0), offer('b', 10), offer('c', 20, 60), offer('d', 30)];

  it('become one tab that says how many they are and where', () => {
    const [tab, ...others] = joinCrowds(four, null, 1, 2);
    expect(others).toEqual([]);
    expect(tab).toMatchObject({ name: '4 offers', ids: ['a', 'b', 'c', 'd'], startS: 0, endS: 60, offer: true });
  });

  it('are taken apart by zooming in', () => {
    expect(names(joinCrowds(four, null, 10 / TOGETHER_PX.offer, 2))).toEqual(['a', 'b', 'c', 'd']);
    expect(names(joinCrowds(four, null, 0, 2))).toEqual(['a', 'b', 'c', 'd']);
  });

  it('stand side by side where there are lanes enough', () => {
    expect(names(joinCrowds(four.slice(0, 2), null, 1, 2))).toEqual(['a', 'b']);
    expect(names(joinCrowds(four.slice(0, 2), null, 1, 1))).toEqual(['2 offers']);
  });

  it('never join marked windows, which are joined among themselves', () => {
    const mine = [marked('m1', 5), marked('m2', 15), marked('m3', 25)];
    expect(names(joinCrowds([...four, ...mine], null, 1, 2))).toEqual(['4 offers', '3 windows']);
    expect(names(joinCrowds([...four, ...mine], 'm2', 1, 2))).toEqual(['4 offers', 'm1', 'm2', 'm3']);
  });

  it('leave the selected one by itself, and marked windows where there are few', () => {
    expect(names(joinCrowds([...four, marked('mine', 15)], 'b', 1, 2))).toEqual(['3 offers', 'b', 'mine']);
  });
});

it('every offer is shown once, and tabs of joined offers never begin too close together', () => {
  const starts = fc.uniqueArray(fc.integer({ min: 0, max: 36_000 }), { maxLength: 60 });
  fc.assert(
    fc.property(starts, fc.double({ min: 0.01, max: 60, noNaN: true }), (list, secondsPerPixel) => {
      const tabs = joinCrowds(
        list.map((startS) => offer(`o${startS}`, startS)),
        null,
        secondsPerPixel,
        2,
      );
      expect(tabs.reduce((sum, { ids }) => sum + ids.length, 0)).toBe(list.length);
      for (const tab of tabs) {
        const near = tabs.filter(
          ({ startS }) => startS >= tab.startS && startS - tab.startS < TOGETHER_PX.offer * secondsPerPixel,
        );
        // No more than two crowds and what is left of each can meet in the width of one.
        expect(near.length).toBeLessThanOrEqual(3);
      }
    }),
  );
});

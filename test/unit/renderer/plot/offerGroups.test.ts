import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinOffers, TOGETHER_PX } from '../../../../renderer/plot/offerGroups.ts';
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
  windows.map(({ name, id }) => (name.endsWith('offers') ? name : id));

describe('crowded offers', () => {
  const four = [offer('a', 0), offer('b', 10), offer('c', 20, 60), offer('d', 30)];

  it('become one tab that says how many they are and where', () => {
    const [tab, ...others] = joinOffers(four, null, 1, 2);
    expect(others).toEqual([]);
    expect(tab).toMatchObject({ name: '4 offers', count: 4, startS: 0, endS: 60, offer: true });
  });

  it('are taken apart by zooming in', () => {
    expect(names(joinOffers(four, null, 10 / TOGETHER_PX, 2))).toEqual(['a', 'b', 'c', 'd']);
    expect(names(joinOffers(four, null, 0, 2))).toEqual(['a', 'b', 'c', 'd']);
  });

  it('stand side by side where there are lanes enough', () => {
    expect(names(joinOffers(four.slice(0, 2), null, 1, 2))).toEqual(['a', 'b']);
    expect(names(joinOffers(four.slice(0, 2), null, 1, 1))).toEqual(['2 offers']);
  });

  it('leave the selected one and marked windows by themselves', () => {
    expect(names(joinOffers([...four, marked('mine', 15)], 'b', 1, 2))).toEqual(['3 offers', 'b', 'mine']);
  });
});

it('every offer is shown once, and tabs of joined offers never begin too close together', () => {
  const starts = fc.uniqueArray(fc.integer({ min: 0, max: 36_000 }), { maxLength: 60 });
  fc.assert(
    fc.property(starts, fc.double({ min: 0.01, max: 60, noNaN: true }), (list, secondsPerPixel) => {
      const tabs = joinOffers(
        list.map((startS) => offer(`o${startS}`, startS)),
        null,
        secondsPerPixel,
        2,
      );
      expect(tabs.reduce((sum, { count }) => sum + count, 0)).toBe(list.length);
      for (const tab of tabs) {
        const near = tabs.filter(
          ({ startS }) => startS >= tab.startS && startS - tab.startS < TOGETHER_PX * secondsPerPixel,
        );
        // No more than two crowds and what is left of each can meet in the width of one.
        expect(near.length).toBeLessThanOrEqual(3);
      }
    }),
  );
});

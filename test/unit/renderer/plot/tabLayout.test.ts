import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAST_TAB_PX, layTabs, type TabWish } from '../../../../renderer/plot/tabLayout.ts';

const tab = (id: string, startX: number, endX: number, width = 120, first = false): TabWish => ({
  id,
  startX,
  endX,
  width,
  first,
});

describe('tabs', () => {
  it('begin where their windows begin', () => {
    expect(layTabs([tab('a', 100, 400), tab('b', 500, 700)], 72, 1000, 2)).toEqual([
      { id: 'a', lane: 0, left: 100, width: 120 },
      { id: 'b', lane: 0, left: 500, width: 120 },
    ]);
  });

  it('stay in sight at the left edge while their window runs in from there', () => {
    expect(layTabs([tab('a', -300, 400)], 72, 1000, 2)[0]?.left).toBe(72);
  });

  it('are left out where their window is not in sight', () => {
    expect(layTabs([tab('a', -300, 10), tab('b', 1200, 1300)], 72, 1000, 2)).toEqual([]);
  });

  it('go to the second lane where they would be cut off', () => {
    const lanes = layTabs([tab('a', 100, 400), tab('b', 150, 300)], 72, 1000, 2).map(({ lane }) => lane);
    expect(lanes).toEqual([0, 1]);
  });

  it('are cut off by the next where there is one lane only', () => {
    const [a] = layTabs([tab('a', 100, 400), tab('b', 150, 300)], 72, 1000, 1);
    expect(a).toEqual({ id: 'a', lane: 0, left: 100, width: 46 });
  });

  it('give the selected window the first lane', () => {
    const places = layTabs([tab('a', 100, 400), tab('b', 150, 300, 120, true)], 72, 1000, 2);
    expect(places.find(({ id }) => id === 'b')?.lane).toBe(0);
  });

  it('cut off another rather than the selected window where there is no room for all', () => {
    const places = layTabs([tab('a', 100, 400), tab('b', 120, 300, 120, true), tab('c', 180, 300)], 72, 1000, 2);
    expect(places.find(({ id }) => id === 'b')?.width).toBe(120);
    expect(places.find(({ id }) => id === 'a')?.width).toBe(76);
  });

  it('never leave the paper and never become too narrow for a finger', () => {
    const wishes = fc.array(
      fc.record({
        startX: fc.integer({ min: -500, max: 1500 }),
        length: fc.integer({ min: 1, max: 900 }),
        width: fc.integer({ min: LEAST_TAB_PX, max: 240 }),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(wishes, (list) => {
        const places = layTabs(
          list.map(({ startX, length, width }, i) => tab(`w${i}`, startX, startX + length, width, i === 0)),
          72,
          1000,
          2,
        );
        for (const place of places) {
          expect(place.left).toBeGreaterThanOrEqual(72);
          expect(place.left + LEAST_TAB_PX).toBeLessThanOrEqual(1000);
          expect(place.width).toBeGreaterThanOrEqual(LEAST_TAB_PX);
        }
      }),
    );
  });
});

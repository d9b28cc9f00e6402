import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generationName, generationTime, superfluous, youngestFirst } from '../../../../main/store/generations.ts';

const DAY = 24 * 60 * 60 * 1000;
const NOW = Date.parse('2026-03-31T12:00:00Z');
const name = (ms: number) => generationName(new Date(ms).toISOString(), 'ab'.repeat(32));

describe('generations', () => {
  it('a name gives back the time of the save, and sorts by it', () => {
    expect(generationName('2026-03-02T08:15:30.123Z', '0123456789abcdef')).toBe(
      '20260302T081530123Z-0123456789ab.json',
    );
    expect(generationTime('20260302T081530123Z-0123456789ab.json')).toBe('2026-03-02T08:15:30.123Z');
    expect(youngestFirst([name(NOW - DAY), 'notes.txt', name(NOW)])).toEqual([name(NOW), name(NOW - DAY)]);
  });

  it('keeps the last ten of a busy minute', () => {
    const saves = Array.from({ length: 25 }, (_, i) => name(NOW - i * 1000));
    expect(superfluous(saves, NOW)).toEqual(saves.slice(10));
  });

  it('keeps the last of each day for thirty days behind them', () => {
    const busy = Array.from({ length: 10 }, (_, i) => name(NOW - i * 1000));
    const noons = Array.from({ length: 40 }, (_, i) => name(NOW - (i + 1) * DAY));
    const mornings = Array.from({ length: 40 }, (_, i) => name(NOW - (i + 1) * DAY - 60 * 60 * 1000));
    const dropped = superfluous([...busy, ...noons, ...mornings], NOW);
    expect(dropped.sort()).toEqual([...mornings, ...noons.slice(30)].sort());
  });

  it('for any saves: never drops one of the youngest ten, and dropping is done once', () => {
    const ages = fc.array(fc.integer({ min: 0, max: 60 * DAY }), { maxLength: 80 });
    fc.assert(
      fc.property(ages, (found) => {
        const saves = [...new Set(found.map((age) => name(NOW - age)))];
        const dropped = superfluous(saves, NOW);
        const kept = youngestFirst(saves.filter((save) => !dropped.includes(save)));
        expect(kept.slice(0, 10)).toEqual(youngestFirst(saves).slice(0, 10));
        expect(superfluous(kept, NOW)).toEqual([]);
      }),
    );
  });
});

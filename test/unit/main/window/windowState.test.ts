import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeOnScreen, type Rectangle } from '../../../../main/window/windowState.ts';

const LAPTOP: Rectangle = { x: 0, y: 24, width: 1280, height: 776 };
const BESIDE: Rectangle = { x: 1280, y: 0, width: 1920, height: 1080 };

describe('C9: the window comes back', () => {
  it('where it was, as large as it was', () => {
    const before = { x: 1500, y: 100, width: 1400, height: 900 };
    expect(placeOnScreen(before, [LAPTOP, BESIDE])).toEqual(before);
  });

  it('on the screen that is left when its own has been unplugged', () => {
    const before = { x: 1500, y: 100, width: 1400, height: 900 };
    expect(placeOnScreen(before, [LAPTOP])).toEqual({ x: 0, y: 24, width: 1280, height: 776 });
  });

  it('the first time in the middle', () => {
    expect(placeOnScreen(null, [BESIDE])).toEqual({ x: 1520, y: 90, width: 1440, height: 900 });
  });

  it('wherever it was and whatever screens there are: a person can see and move it', () => {
    const at = fc.integer({ min: -5000, max: 5000 });
    const size = fc.integer({ min: 1, max: 6000 });
    const screenSize = fc.integer({ min: 640, max: 4000 });
    const before = fc.option(fc.record({ x: at, y: at, width: size, height: size }));
    const screens = fc.array(fc.record({ x: at, y: at, width: screenSize, height: screenSize }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(before, screens, (was, there) => {
        const placed = placeOnScreen(was, there);
        const homes = there.filter((screen) => {
          const seen = Math.min(placed.x + placed.width, screen.x + screen.width) - Math.max(placed.x, screen.x);
          const bar = placed.y >= screen.y && placed.y + 32 <= screen.y + screen.height;
          return seen >= 160 && bar && placed.width <= screen.width && placed.height <= screen.height;
        });
        expect(homes.length).toBeGreaterThan(0);
      }),
    );
  });

  it('coming back twice is coming back once', () => {
    const any = fc.record({
      x: fc.integer({ min: -3000, max: 3000 }),
      y: fc.integer({ min: -3000, max: 3000 }),
      width: fc.integer({ min: 1, max: 4000 }),
      height: fc.integer({ min: 1, max: 4000 }),
    });
    fc.assert(
      fc.property(any, (was) => {
        const once = placeOnScreen(was, [LAPTOP, BESIDE]);
        expect(placeOnScreen(once, [LAPTOP, BESIDE])).toEqual(once);
      }),
    );
  });
});

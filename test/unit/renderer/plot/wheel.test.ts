import { describe, expect, it } from 'vitest';
import { type WheelTurn, wheelDeed } from '../../../../renderer/plot/wheel.ts';

const still: WheelTurn = {
  deltaX: 0,
  deltaY: 0,
  deltaMode: 0,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
};
const notch = { ...still, deltaY: 100 };

describe('the wheel over a pane', () => {
  it('zooms out towards the person and in away from them, by a fifth a notch', () => {
    expect(wheelDeed(notch, 'zoom')).toEqual({ kind: 'zoom', factor: expect.closeTo(1.2, 6) });
    expect(wheelDeed({ ...notch, deltaY: -100 }, 'zoom')).toEqual({ kind: 'zoom', factor: expect.closeTo(1 / 1.2, 6) });
  });

  it('pans instead where the setting says so, and with Shift under both settings', () => {
    expect(wheelDeed(notch, 'pan')).toEqual({ kind: 'pan', pixels: 100 });
    for (const plain of ['zoom', 'pan'] as const) {
      expect(wheelDeed({ ...notch, shiftKey: true }, plain)).toEqual({ kind: 'pan', pixels: 100 });
      // Some systems turn the axes themselves when Shift is held.
      expect(wheelDeed({ ...still, deltaX: 100, shiftKey: true }, plain)).toEqual({ kind: 'pan', pixels: 100 });
    }
  });

  it('pans sideways with two fingers under both settings', () => {
    const sideways = { ...still, deltaX: -30, deltaY: 4 };
    expect(wheelDeed(sideways, 'zoom')).toEqual({ kind: 'pan', pixels: -30 });
    expect(wheelDeed(sideways, 'pan')).toEqual({ kind: 'pan', pixels: -30 });
  });

  it.each(['ctrlKey', 'metaKey'] as const)('zooms with %s under both settings', (modifier) => {
    for (const plain of ['zoom', 'pan'] as const) {
      expect(wheelDeed({ ...notch, [modifier]: true }, plain)?.kind).toBe('zoom');
    }
  });

  it('zooms faster per pixel in a pinch, which sends small steps', () => {
    const pinch = wheelDeed({ ...still, deltaY: -4, ctrlKey: true }, 'pan');
    const wheel = wheelDeed({ ...still, deltaY: -4 }, 'zoom');
    if (pinch?.kind !== 'zoom' || wheel?.kind !== 'zoom') throw new Error('both zoom');
    expect(pinch.factor).toBeLessThan(wheel.factor);
  });

  it('changes the height of values with Alt', () => {
    expect(wheelDeed({ ...notch, altKey: true }, 'zoom')?.kind).toBe('value');
  });

  it('counts lines and pages, and never zooms more than threefold at once', () => {
    expect(wheelDeed({ ...still, deltaY: 3, deltaMode: 1 }, 'pan')).toEqual({ kind: 'pan', pixels: 48 });
    const page = wheelDeed({ ...still, deltaY: 90, deltaMode: 2 }, 'zoom');
    expect(page).toEqual({ kind: 'zoom', factor: expect.closeTo(3, 6) });
  });

  it('does nothing where nothing moved', () => {
    expect(wheelDeed(still, 'zoom')).toBeNull();
  });
});

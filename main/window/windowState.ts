// Where the window was, and where it may be again: always where a person can see and move it.

import { z } from 'zod';

const whole = z.number().int().min(-100_000).max(100_000);

export const windowStateSchema = z.strictObject({
  bounds: z.strictObject({ x: whole, y: whole, width: whole, height: whole }).nullable(),
  maximized: z.boolean(),
  fullScreen: z.boolean(),
});
export type WindowState = z.infer<typeof windowStateSchema>;

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const FIRST_STATE: WindowState = { bounds: null, maximized: false, fullScreen: false };

/** Traces, margins and the finding need this much; on a smaller screen the window is as large as the screen. */
export const SMALLEST = { width: 960, height: 600 };
const FIRST_SIZE = { width: 1440, height: 900 };

/** So much of the window's upper edge, by which it is moved, must be on a screen. */
const GRIP = { width: 160, height: 32 };

/**
 * Bounds for a window that was at `before` the last time, on the screens there are now; `screens` are the parts of them
 * that no bar covers, the main one first. Never larger than its screen, never off it.
 */
export function placeOnScreen(before: Rectangle | null, screens: readonly Rectangle[]): Rectangle {
  const main = screens[0] ?? { x: 0, y: 0, ...FIRST_SIZE };
  if (before === null) return centred(FIRST_SIZE, main);
  const home = screens.find((screen) => gripIn(before, screen));
  const size = fitted(before, home ?? main);
  if (home === undefined) return centred(size, main);
  return {
    x: clamp(before.x, home.x - size.width + GRIP.width, home.x + home.width - GRIP.width),
    y: clamp(before.y, home.y, home.y + home.height - GRIP.height),
    ...size,
  };
}

function gripIn({ x, y, width }: Rectangle, screen: Rectangle): boolean {
  const seen = Math.min(x + width, screen.x + screen.width) - Math.max(x, screen.x);
  return seen >= GRIP.width && y >= screen.y - GRIP.height && y <= screen.y + screen.height - GRIP.height;
}

function fitted(wanted: { width: number; height: number }, screen: Rectangle): { width: number; height: number } {
  return {
    width: Math.min(screen.width, Math.max(SMALLEST.width, wanted.width)),
    height: Math.min(screen.height, Math.max(SMALLEST.height, wanted.height)),
  };
}

function centred(wanted: { width: number; height: number }, screen: Rectangle): Rectangle {
  const { width, height } = fitted(wanted, screen);
  return {
    x: screen.x + Math.round((screen.width - width) / 2),
    y: screen.y + Math.round((screen.height - height) / 2),
    width,
    height,
  };
}

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

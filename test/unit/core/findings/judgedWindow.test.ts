// Remembered judgements are those that would be made anew, and none is taken for another.

import { expect, test } from 'vitest';
import { USUAL_COSTS } from '../../../../core/findings/costs.ts';
import { judgedWindow } from '../../../../core/findings/judgedWindow.ts';
import { judgeWindow } from '../../../../core/findings/judgeWindow.ts';
import type { CaptureWindow } from '../../../../core/windows/window.ts';
import { pairCapture } from '../../../support/drivenPair.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

const CAPTURE = pairCapture({ seed: 5, seconds: 40, hz: 1.4, through: 0.5, lagS: 0.2 }, 10);
const WINDOW: CaptureWindow = { startS: 5, endS: 35, bank: 1, kind: 'hold', origin: 'byHand' };
const ASKED = [
  [WINDOW, 1, []],
  [{ ...WINDOW, endS: 30 }, 1, []],
  [{ ...WINDOW, kind: 'cruise' }, 1, []],
  [WINDOW, 1, ['P0301']],
  [WINDOW, 2, []],
] as const;

test('every window, bank and list of codes has its own', () => {
  const asked = () =>
    ASKED.map(([window, bank, codes]) => judgedWindow(CAPTURE, window, bank, codes, USUAL_COSTS).score);
  const anew = ASKED.map(([window, bank, codes]) => judgeWindow(CAPTURE, window, bank, codes, USUAL_COSTS).score);
  expect(asked()).toEqual(anew);
  expect(asked()).toEqual(anew);
});

test('a window is judged once, until many others were asked for', () => {
  const ask = (endS: number) => judgedWindow(CAPTURE, { ...WINDOW, kind: 'idle', endS }, 1, [], USUAL_COSTS);
  const first = ask(10);
  expect(ask(10)).toBe(first);
  for (let k = 0; k < 64; k++) ask(11 + k / 10);
  expect(ask(10)).not.toBe(first);
  expect(ask(10)).toEqual(first);
});

test('a stretch of idling that was marked by hand is judged as an idle, which condemns nothing', async () => {
  const drive = await sampleCapture('van-before.csv');
  const marked: CaptureWindow = { startS: 12, endS: 45, bank: 1, kind: 'mixed', origin: 'byHand' };
  const { score } = judgedWindow(drive, marked, 1, [], USUAL_COSTS);
  expect(score).toEqual(judgeWindow(drive, { ...marked, kind: 'idle' }, 1, [], USUAL_COSTS).score);
  expect(score.blockers.map(({ id }) => id)).toContain('idleOnly');
});

import { describe, expect, it } from 'vitest';
import { fitCapture } from '../../../../core/model/fitCapture.ts';
import type { CaptureWindow } from '../../../../core/windows/window.ts';
import { fittedDrive, without } from '../../../support/fittedDrive.ts';

const HOLD: CaptureWindow = { startS: 8, endS: 68, bank: 1, kind: 'hold', origin: 'byHand' };

describe('the fit of a whole capture', () => {
  it('joins the hold and both fuel cuts, and comes within a factor of 1.5 with an interval that holds the truth', () => {
    for (const capacityG of [0.3, 0.8]) {
      const { capture, trueG } = fittedDrive(capacityG, 12);
      const fit = fitCapture(capture, 1, [HOLD]);
      expect(fit?.steady).toBe(1);
      expect(fit?.airPulls).toBe(2);
      expect(Math.abs(Math.log((fit?.capacityG ?? 0) / trueG))).toBeLessThan(Math.log(1.5));
      expect(fit?.intervalG?.[0]).toBeLessThan(trueG);
      expect(fit?.intervalG?.[1]).toBeGreaterThan(trueG);
    }
  });

  it('finds the fuel cuts by itself, without engine speed, throttle or windows', () => {
    const { capture } = fittedDrive(0.8, 12);
    expect(fitCapture(without(without(capture, 'rpm'), 'load'), 1, [])?.airPulls).toBe(2);
  });

  it('is null for a bank that was not recorded', () => {
    expect(fitCapture(fittedDrive(0.8, 12).capture, 2, [HOLD])).toBeNull();
  });
});

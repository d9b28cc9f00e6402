// What a capture is scored with: from the flags, and for a capture of a bundle from the record where no flag says so.

import type { Capture } from '../../core/capture/capture.ts';
import { tellsOf } from '../../core/findings/judgeStage.ts';
import { readingsInOrder, troubleCodesInOrder, windowsInOrder } from '../../core/record/inOrder.ts';
import type { CaptureRef, Reading, VehicleRecord } from '../../core/record/schema.ts';
import type { ScoreRequest } from '../../core/scoreCapture.ts';
import { celsius, pairOf } from '../../core/thermal/pairOf.ts';
import { kindOf } from '../../core/windows/kindOf.ts';
import type { CaptureWindow } from '../../core/windows/window.ts';
import type { ScoreArguments } from './arguments.ts';
import { placeWindow } from './typedWindow.ts';

/** The request of the flags; a sentence where a window has no place in this capture. */
export function requestOfFlags(capture: Capture, asked: ScoreArguments): ScoreRequest | string {
  const windows = windowsFor(capture, asked);
  if (typeof windows === 'string') return windows;
  const { bank, troubleCodes, temperatures } = asked;
  const thermal = temperatures.map(({ inlet, outlet }, i) => ({
    inletC: celsius(inlet),
    outletC: celsius(outlet),
    bank,
    brick: i + 1,
    rpm: null,
    emissivity: null,
  }));
  return { windows, bank, thermal, troubleCodes };
}

/** The same for a capture of a record: its windows, readings and codes count where no flag gives others. */
export function requestOfRecord(
  capture: Capture,
  asked: ScoreArguments,
  record: VehicleRecord,
  ref: CaptureRef,
): ScoreRequest | string {
  const flags = requestOfFlags(capture, asked);
  if (typeof flags === 'string') return flags;
  const windows = windowsInOrder(record).filter(({ captureId }) => captureId === ref.id);
  return {
    bank: flags.bank,
    windows: flags.windows ?? (windows.length === 0 ? null : windows.map(captureWindow)),
    thermal: asked.temperatures.length > 0 ? flags.thermal : readingsOf(record, ref).map(pairOf),
    troubleCodes: asked.troubleCodes.length > 0 ? flags.troubleCodes : codesOf(record, ref),
  };
}

/** Whether a flag says something that a record says, too. */
export function overrides({ windows, bank, temperatures, troubleCodes, columns }: ScoreArguments): boolean {
  const lists = temperatures.length + troubleCodes.length;
  return windows !== null || bank !== null || columns !== null || lists > 0;
}

/** Readings that were taken while this capture ran; those of no capture tell how the vehicle was found. */
function readingsOf(record: VehicleRecord, { id, kind }: CaptureRef): Reading[] {
  return readingsInOrder(record).filter(({ captureId }) =>
    captureId === null ? tellsOf(kind, 'before') : captureId === id,
  );
}

/** Codes belong to the car as it was found, as in the vehicle's own score. */
function codesOf(record: VehicleRecord, { kind }: CaptureRef): string[] {
  return tellsOf(kind, 'before') ? troubleCodesInOrder(record).map(({ code }) => code) : [];
}

function captureWindow({ startS, endS, bank, kind, origin }: CaptureWindow): CaptureWindow {
  return { startS, endS, bank, kind, origin };
}

/** The windows that were asked for, placed in this capture; null for the suggested ones; a sentence where one has no place. */
function windowsFor(capture: Capture, { windows, bank }: ScoreArguments): CaptureWindow[] | null | string {
  if (windows === null) return null;
  const placed: CaptureWindow[] = [];
  for (const window of windows) {
    const stretch = placeWindow(window, capture);
    if (typeof stretch === 'string') return stretch;
    placed.push({ ...stretch, bank, kind: kindOf(capture, stretch), origin: 'byHand' });
  }
  return placed;
}

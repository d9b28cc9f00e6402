import type { Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import { banksToJudge } from './banksToJudge.ts';
import { closedLoopPart } from './closedLoopPart.ts';
import { engineTrack } from './engineTrack.ts';
import { WINDOW_KIND_RULES } from './kinds/index.ts';
import { settledPieces } from './settledPieces.ts';
import type { CaptureWindow, Stretch, WindowKind } from './window.ts';

/** With no engine speed and no other hint, stretches of this length of the whole capture are offered. */
const BLIND_S = 120;
const BLIND_OFFERS = 6;

/**
 * Windows worth scoring, in order of time: steady holds, cruises and idles, snaps and fuel cuts, at most a few of each
 * kind, the longest first. Where the capture has one bank they carry it; with two banks `bank` is null and the window
 * stands for both. A capture without engine speed is offered in 'mixed' pieces of at most two minutes. A capture
 * without any oxygen sensor is offered its steady stretches all the same: the engine's conditions can be read in them.
 */
export const suggestWindows = remember((capture: Capture): CaptureWindow[] => {
  if (!(capture.durationS > 0)) return [];
  const banks = banksToJudge(capture);
  const bank = banks.length === 1 ? (banks[0] ?? null) : null;
  const offers: CaptureWindow[] = [];
  const offer = (kind: WindowKind, stretches: readonly Stretch[]): void => {
    for (const { startS, endS } of stretches) offers.push({ startS, endS, bank, kind, origin: 'suggested' });
  };
  const track = engineTrack(capture);
  for (const rule of WINDOW_KIND_RULES) {
    const found = rule.find(track, capture);
    offer(
      rule.kind,
      longest(rule.steady ? found.map((one) => closedLoopPart(track, one)).flatMap(settledPieces) : found, rule.offers),
    );
  }
  if (!track.of.rpm) offer('mixed', longest(evenPieces(capture.durationS), BLIND_OFFERS));
  return offers.sort((a, b) => a.startS - b.startS || a.endS - b.endS);
});

function longest(stretches: readonly Stretch[], count: number): Stretch[] {
  return [...stretches].sort((a, b) => b.endS - b.startS - (a.endS - a.startS) || a.startS - b.startS).slice(0, count);
}

function evenPieces(durationS: number): Stretch[] {
  const pieces = Math.max(1, Math.ceil(durationS / BLIND_S));
  const pieceS = durationS / pieces;
  return Array.from({ length: pieces }, (_, i) => ({ startS: i * pieceS, endS: (i + 1) * pieceS }));
}

import type { VehicleScore } from '../../../core/findings/vehicleScore.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import type { ShownNote, ShownWindow } from '../../plot/traceStackProps.ts';
import type { HeldCapture } from '../captureStore.ts';
import { gravest, windowScoresOf } from '../scoreStore.ts';
import { offerName, openOffers } from './offers.ts';
import { windowName } from './windowNames.ts';

const WORDS_ON_A_FLAG = 40;

/** Windows of a capture as the traces show them: marked ones with their finding, offers as outlines. */
export function shownWindows(
  held: HeldCapture,
  record: VehicleRecord | null,
  score: VehicleScore | null,
): readonly ShownWindow[] {
  const marked = Object.values(record?.windows ?? {}).filter((window) => window.captureId === held.captureId);
  return [
    ...marked.map((window) => ({
      id: window.id,
      name: windowName(window),
      startS: window.startS,
      endS: window.endS,
      finding: gravest(windowScoresOf(score, window.id)),
      offer: false,
    })),
    ...openOffers(held, record).map(({ id, window }) => ({
      id,
      name: offerName(window),
      startS: window.startS,
      endS: window.endS,
      finding: null,
      offer: true,
    })),
  ].sort((a, b) => a.startS - b.startS);
}

/** Notes of a capture as the traces show them. */
export function shownNotes(captureId: string, record: VehicleRecord | null): readonly ShownNote[] {
  return Object.values(record?.notes ?? {}).flatMap((note) =>
    note.captureId === captureId && note.startS !== null
      ? [{ id: note.id, startS: note.startS, endS: note.endS, words: firstWords(note.text) }]
      : [],
  );
}

/** The beginning of a text, cut at a word. */
export function firstWords(text: string, most = WORDS_ON_A_FLAG): string {
  const line = text.trim().split('\n')[0] ?? '';
  if (line.length <= most) return line === '' ? 'Empty note' : line;
  const cut = line.slice(0, most);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), most / 2))}…`;
}

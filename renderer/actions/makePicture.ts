import type { TracePictureInput } from '../../core/evidence/picture/picture.ts';
import { tracePicture } from '../../core/evidence/tracePicture.ts';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { PaneLayout } from '../plot/traceStackProps.ts';
import type { Program } from '../program/program.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { shownNotes, shownWindows } from '../state/selectors/onTraces.ts';
import { shownCapture, shownView } from '../state/selectors/shown.ts';
import { instantWords } from '../words/times.ts';
import { picturePanes } from './picturePanes.ts';

/** px of a picture before it is enlarged. */
export const PICTURE_WIDTH = 1200;
const ROOM = 170;
const PANE_HEIGHT = 150;

/** The visible traces as an SVG document that stands alone; null where nothing is shown. */
export async function makePicture(program: Program): Promise<string | null> {
  const held = shownCapture(program);
  const view = shownView(program);
  const record = recordOf(program.record.getState());
  if (held === null || view === null || record === null) return null;
  const input = await pictureOf(program, record, held, view.panes, view.visible);
  return input === null ? null : tracePicture(input);
}

/** What a picture of a stretch is made from; null where there is nothing to draw. */
export async function pictureOf(
  program: Program,
  record: VehicleRecord,
  held: HeldCapture,
  layout: readonly PaneLayout[],
  stretch: Stretch,
): Promise<TracePictureInput | null> {
  const { showGuides } = program.settings.getState().settings;
  const panes = await picturePanes(held, layout, stretch, PICTURE_WIDTH, showGuides);
  if (panes.length === 0 || !(stretch.startS < stretch.endS)) return null;
  const capture = record.captures[held.captureId];
  const windows = shownWindows(held, record, program.score.getState().score).filter((one) => !one.offer);
  const foot = [
    capture?.name ?? held.summary.name,
    `SHA-256 ${held.summary.sha256.slice(0, 12)}`,
    ...(capture?.sample === true ? ['invented sample'] : []),
    instantWords(program.clock.instant()),
  ];
  return {
    title: record.identity.name,
    foot: foot.join(', '),
    ...stretch,
    panes,
    windows: windows
      .filter((one) => one.endS > stretch.startS && one.startS < stretch.endS)
      .map(({ startS, endS, name, finding }) => ({
        startS,
        endS,
        words: finding === null ? name : `${name}: ${FINDING_WORDS[finding].toLowerCase()}`,
      })),
    notes: shownNotes(held.captureId, record)
      .filter((note) => note.startS >= stretch.startS && note.startS <= stretch.endS)
      .map(({ startS, words }) => ({ startS, words })),
    decimalSign: '.',
    width: PICTURE_WIDTH,
    height: ROOM + panes.length * PANE_HEIGHT,
  };
}

/** An SVG document drawn as a PNG, `scale` times its size. Rejects where this window cannot draw it. */
export async function pngOf(svg: string, scale: number): Promise<Uint8Array<ArrayBuffer>> {
  const image = new Image();
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * scale;
    canvas.height = image.naturalHeight * scale;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (blob === null) throw new Error('The picture could not be drawn at this size.');
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(address);
  }
}

// The evidence sheet of the headless command: a vehicle record is made of what was scored, and the sheet of that.

import { createHash } from 'node:crypto';
import { extname } from 'node:path';
import { sampleCount } from '../../core/capture/timeBase.ts';
import type { ReadInput } from '../../core/contract/buildCommandReport.ts';
import { buildSheet } from '../../core/evidence/buildSheet.ts';
import { sheetFormat } from '../../core/evidence/formats/index.ts';
import { capturePanes } from '../../core/evidence/picture/capturePanes.ts';
import type { TracePictureInput } from '../../core/evidence/picture/picture.ts';
import type { Sheet } from '../../core/evidence/sheet.ts';
import { NOTHING_PRIVATE, type SheetPicture } from '../../core/evidence/sheetInput.ts';
import { describe, tracePicture } from '../../core/evidence/tracePicture.ts';
import { dayOf } from '../../core/evidence/words/quantities.ts';
import { FINDING_WORDS, WINDOW_KIND_WORDS } from '../../core/evidence/words/terms.ts';
import { judgeVehicle } from '../../core/findings/judgeVehicle.ts';
import type { VehicleScore } from '../../core/findings/vehicleScore.ts';
import { checkOpinions } from '../../core/opinions/chain.ts';
import { canonicalJson } from '../../core/record/canonical.ts';
import { evidenceOf } from '../../core/record/evidenceOf.ts';
import { newVehicle } from '../../core/record/newVehicle.ts';
import type { RecordWindow, VehicleRecord } from '../../core/record/schema.ts';
import { CORE_VERSION } from '../../core/version.ts';
import type { CaptureWindow } from '../../core/windows/window.ts';
import type { ScoreArguments } from './arguments.ts';
import type { ReadWithChoice } from './readInput.ts';

/** A capture that was scored, with the windows it was scored in. */
export interface ScoredInput extends ReadWithChoice {
  /** In the record of the sheet: unlike every other's. */
  readonly captureId: string;
  readonly windows: readonly CaptureWindow[];
}

/**
 * The sheet over all captures of one call. `now` is RFC 3339 with offset. `bundled` is the record of a bundle that was the
 * whole of what was asked for; otherwise a record is made of the captures and the flags.
 */
export async function sheetOf(
  scored: readonly ScoredInput[],
  asked: ScoreArguments,
  now: string,
  bundled: VehicleRecord | null = null,
): Promise<Sheet> {
  const record = bundled ?? recordOf(scored, asked, now);
  const byId = new Map(scored.map(({ captureId, capture }) => [captureId, capture]));
  const evidence = evidenceOf(record, (id) => {
    const capture = byId.get(id);
    return capture === undefined ? null : { capture };
  });
  const score = judgeVehicle(evidence);
  return buildSheet({
    record,
    score,
    opinions: await checkOpinions(record, async (text) => sha256Of(text)),
    captures: Object.fromEntries(scored.map((one) => [one.captureId, factsOf(one)])),
    pictures: scored.flatMap((one) => pictureOf(one, record, score, now)),
    comparisons: [],
    hash: { of: 'the record in canonical form', sha256: sha256Of(canonicalJson(record)) },
    settings: {
      temperatureUnit: evidence.readings[0]?.inlet.unit ?? 'C',
      decimalSign: '.',
      paper: 'A4',
      include: NOTHING_PRIVATE,
      madeAt: now,
      reader: '',
      coreVersion: CORE_VERSION,
    },
  });
}

/** The sheet as the text of a file. PDF is printed from the HTML by the shell. */
export function sheetText(sheet: Sheet, ending: 'html' | 'csv' | 'json' | 'md'): string {
  const format = sheetFormat(ending);
  if (format === null) throw new Error(`no format writes .${ending}`);
  return format.write(sheet);
}

function recordOf(scored: readonly ScoredInput[], asked: ScoreArguments, now: string): VehicleRecord {
  const [first] = scored;
  const name =
    first === undefined
      ? ''
      : first.capture.name.slice(0, first.capture.name.length - extname(first.capture.name).length);
  const record = newVehicle({
    id: 'command',
    name: name.trim() === '' ? 'Vehicle' : name.slice(0, 500),
    createdAt: now,
  });
  return {
    ...record,
    troubleCodes: Object.fromEntries(
      asked.troubleCodes.map((code, i) => [`t${i}`, { id: `t${i}`, code, status: 'unknown' as const }]),
    ),
    captures: Object.fromEntries(scored.map((one) => [one.captureId, captureRef(one, now)])),
    windows: Object.fromEntries(scored.flatMap(windowsOf).map((window) => [window.id, window])),
    readings: Object.fromEntries(
      asked.temperatures.map(({ inlet, outlet }, i) => [
        `r${i}`,
        {
          id: `r${i}`,
          bank: asked.bank,
          brick: i + 1,
          inlet,
          outlet,
          rpm: null,
          emissivity: null,
          takenAt: now,
          captureId: null,
        },
      ]),
    ),
  };
}

function captureRef({ capture, sha256, captureId, choice }: ScoredInput, now: string) {
  return {
    id: captureId,
    kind: 'other' as const,
    name: capture.name,
    bytes: capture.bytes,
    sha256,
    addedAt: now,
    durationS: capture.durationS,
    rows: capture.rows,
    columnChoice: choice,
    sample: false,
  };
}

function windowsOf({ windows, captureId }: ScoredInput): RecordWindow[] {
  return windows.map(({ startS, endS, bank, kind, origin }, i) => ({
    id: `${captureId}w${i}`,
    captureId,
    name: '',
    startS,
    endS,
    bank,
    kind,
    origin,
  }));
}

function factsOf({ capture }: ReadInput) {
  return {
    startClock: capture.startClock,
    warnings: capture.warnings,
    layout: capture.layout,
    channels: capture.channels.map((channel) => ({ ...channel, samples: sampleCount(channel.time) })),
  };
}

const WIDTH = 1000;
const PANE_HEIGHT = 150;
const AROUND = 150;
/** Share of the windows' stretch that is shown before and behind them. */
const ROOM = 0.08;

/** The traces over the stretch that holds all scored windows; none where there is nothing to draw. */
function pictureOf(one: ScoredInput, record: VehicleRecord, score: VehicleScore, now: string): SheetPicture[] {
  const { capture, sha256, captureId, windows } = one;
  if (windows.length === 0) return [];
  const first = Math.min(...windows.map(({ startS }) => startS));
  const last = Math.max(...windows.map(({ endS }) => endS));
  const room = (last - first) * ROOM;
  const stretch = { startS: Math.max(0, first - room), endS: Math.min(capture.durationS, last + room) };
  const panes = capturePanes(capture, stretch, WIDTH);
  if (panes.length === 0 || !(stretch.startS < stretch.endS)) return [];
  const drawn: TracePictureInput = {
    title: capture.name,
    foot: `${capture.name} · SHA-256 ${sha256.slice(0, 12)} · ${dayOf(now)}`,
    ...stretch,
    panes,
    windows: Object.values(record.windows)
      .filter((window) => window.captureId === captureId)
      .map((window) => ({ startS: window.startS, endS: window.endS, words: tabWords(window, score) })),
    notes: [],
    decimalSign: '.',
    width: WIDTH,
    height: AROUND + panes.length * PANE_HEIGHT,
  };
  return [
    {
      captureId,
      caption: `Traces of ${capture.name}`,
      alternative: describe(drawn),
      svg: tracePicture(drawn),
    },
  ];
}

function tabWords({ id, kind }: RecordWindow, score: VehicleScore): string {
  const findings = score.windows
    .filter(({ windowId }) => windowId === id)
    .map((one) => FINDING_WORDS[one.score.finding]);
  return `${WINDOW_KIND_WORDS[kind]}: ${findings.join(', ').toLowerCase()}`;
}

function sha256Of(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

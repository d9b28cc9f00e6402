import type { CaptureSummary } from '../../core/bridge/coreMessages.ts';
import { questionUnderWay } from '../plot/settled.ts';
import type { Program } from '../program/program.ts';
import { readsBlind } from '../state/recordStore.ts';
import { traceSource } from '../worker/traceSource.ts';
import { firstView } from '../workspace/firstPanes.ts';
import type { ReadFile } from './readPicked.ts';

/** Takes a read file as the capture `captureId` of the record: its traces can be drawn, its windows scored. */
export async function holdCapture(program: Program, captureId: string, file: ReadFile): Promise<void> {
  const { core, captures } = program;
  const { key } = file.summary;
  const before = captures.getState().held[captureId];
  captures.getState().hold({
    captureId,
    token: file.picked.token,
    summary: file.summary,
    source: traceSource(core, key),
    offers: [],
    question: file.question,
    choice: file.choice,
  });
  if (before !== undefined && before.summary.key !== key) void core.ask('close', { key: before.summary.key });
  await askOffers(program, captureId);
}

/** Asks for the windows that the core offers in a held capture. None are asked for while the vehicle is read blind. */
export async function askOffers({ core, captures, record }: Program, captureId: string): Promise<void> {
  const key = captures.getState().held[captureId]?.summary.key;
  if (key === undefined || readsBlind(record.getState())) return;
  const answered = questionUnderWay(); // the window has not settled before its offers are there
  try {
    const offers = await core.ask('suggest', { key });
    if (offers.ok && captures.getState().held[captureId]?.summary.key === key)
      captures.getState().offers(captureId, offers.value);
  } finally {
    answered();
  }
}

/** Lets a capture go; its place in the record is another matter. */
export function releaseCapture(program: Program, captureId: string): void {
  const held = program.captures.getState().held[captureId];
  program.captures.getState().release(captureId);
  if (held !== undefined) void program.core.ask('close', { key: held.summary.key });
}

/** Shows a capture, from its beginning to its end where it was never looked at before. */
export function showCapture(program: Program, captureId: string, summary: CaptureSummary): void {
  const { workspace } = program;
  workspace.getState().showCapture(captureId, firstView(summary, workspace.getState().overlay));
}

// What a vehicle's window looked like, as it is kept between starts. It comes back through this schema, once; what
// does not fit is left behind and the view begins afresh.

import { z } from 'zod';

const finite = z.number();
const stretch = z.object({ startS: finite, endS: finite });

const paneSchema = z.object({
  id: z.string(),
  channelIds: z.array(z.string()),
  share: finite,
  folded: z.boolean().exactOptional(),
  scale: z.union([
    z.object({ kind: z.literal('quantity') }),
    z.object({ kind: z.literal('auto') }),
    z.object({ kind: z.literal('hand'), low: finite, high: finite }),
  ]),
});

/** How one capture is looked at. */
export const captureViewSchema = z.object({
  visible: stretch,
  panes: z.array(paneSchema),
  cursorS: finite.nullable(),
  secondCursorS: finite.nullable(),
  /** Views before and after this one, nearest last and nearest first. */
  back: z.array(stretch).max(50),
  forward: z.array(stretch).max(50),
});

export const selectionSchema = z.object({ kind: z.enum(['window', 'offer', 'note', 'reading']), id: z.string() });

export const viewStateSchema = z.object({
  version: z.literal(1),
  captureId: z.string().nullable(),
  captures: z.record(z.string(), captureViewSchema),
  selected: selectionSchema.nullable(),
  windowId: z.string().nullable(),
  tool: z.enum(['mark', 'pan', 'zoom', 'note']),
  leftMargin: z.boolean(),
  rightMargin: z.boolean(),
  overlay: z.boolean(),
  table: z.boolean(),
  ghosts: z.boolean(),
  report: z.enum(['window', 'vehicle', 'capture']),
  compare: z.object({ firstId: z.string(), secondId: z.string(), offsetS: finite }).nullable(),
});

export type CaptureView = z.infer<typeof captureViewSchema>;
export type Selection = z.infer<typeof selectionSchema>;
export type ViewState = z.infer<typeof viewStateSchema>;

export const FRESH_VIEW: ViewState = {
  version: 1,
  captureId: null,
  captures: {},
  selected: null,
  windowId: null,
  tool: 'mark',
  leftMargin: true,
  rightMargin: true,
  overlay: true,
  table: false,
  ghosts: false,
  report: 'window',
  compare: null,
};

/** The view as it was kept; a fresh one where nothing usable was. */
export function readViewState(kept: unknown): ViewState {
  const read = viewStateSchema.safeParse(kept);
  return read.success ? read.data : FRESH_VIEW;
}

import type { ChannelSummary } from '../../core/bridge/coreMessages.ts';
import type { PictureGuide, PicturePane } from '../../core/evidence/picture/picture.ts';
import { roleWords } from '../../core/evidence/words/terms.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { paneKindOf } from '../panes/index.ts';
import type { Guide } from '../panes/paneKind.ts';
import type { PaneLayout } from '../plot/traceStackProps.ts';
import type { HeldCapture } from '../state/captureStore.ts';

/** The panes of a capture as a picture draws them: the same traces, scales and guides as on the screen. */
export async function picturePanes(
  { summary, source }: HeldCapture,
  panes: readonly PaneLayout[],
  stretch: Stretch,
  buckets: number,
  guides: boolean,
): Promise<PicturePane[]> {
  const drawn: PicturePane[] = [];
  for (const pane of panes) {
    if (pane.folded === true) continue;
    const channels = pane.channelIds.flatMap((id) => summary.channels.filter((channel) => channel.id === id));
    const views = await source.views(pane.channelIds, stretch, buckets);
    const first = channels[0];
    if (first === undefined) continue;
    const kind = paneKindOf(first.role);
    drawn.push({
      words: channels.length === 1 ? nameOf(first) : `${kind.words}${bankOf(first)}`,
      unit: first.unit,
      scale: scaleOf(pane, channels),
      traces: channels.flatMap((channel) => {
        const view = views.find((one) => one.channelId === channel.id);
        const { role, bank, sensor } = channel;
        return view === undefined ? [] : [{ words: nameOf(channel), role, bank, sensor, view }];
      }),
      guides: guides ? kind.guides.map(pictureGuide) : [],
    });
  }
  return drawn;
}

function nameOf({ role, bank, name }: ChannelSummary): string {
  return role === 'other' ? name : roleWords(role, bank);
}

function bankOf({ bank }: ChannelSummary): string {
  return bank === null ? '' : `, bank ${bank}`;
}

/** A hand-set scale as it is set; else the quantity's own, over everything the channels hold. */
function scaleOf({ scale }: PaneLayout, channels: readonly ChannelSummary[]): readonly [number, number] {
  if (scale.kind === 'hand') return [scale.low, scale.high];
  const low = Math.min(...channels.map(({ facts }) => facts.min));
  const high = Math.max(...channels.map(({ facts }) => facts.max));
  const role = channels[0]?.role ?? 'other';
  const [from, to] = paneKindOf(role).quantityRange(low, high);
  return from < to ? [from, to] : [from - 1, to + 1];
}

function pictureGuide(guide: Guide): PictureGuide {
  return guide.kind === 'line'
    ? { low: guide.at, high: guide.at, words: guide.words }
    : { low: guide.low, high: guide.high, words: guide.words };
}

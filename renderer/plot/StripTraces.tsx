import { useMemo } from 'react';
import type { ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { paneKindOf } from '../panes/index.ts';
import type { OverviewProps } from './overviewProps.ts';
import { PaneCanvas } from './PaneCanvas.tsx';
import { channelsOf, paneModel } from './paneModel.ts';
import { LEFT_GUTTER, type Stage } from './stage.ts';

const CANVAS_STYLE = { leftGutter: LEFT_GUTTER, margin: 3, timeGrid: false, valueLabels: false } as const;

type StripTracesProps = Pick<OverviewProps, 'capture' | 'source' | 'channelIds' | 'theme'> & { readonly stage: Stage };

/** Channels of one kind share a scale; each kind has the strip's whole height. */
export function StripTraces(props: StripTracesProps) {
  const { stage, capture, source, channelIds, theme } = props;
  const ids = channelIds.join('\n');
  const models = useMemo(() => {
    const setting = { capture, source, theme, units: undefined, guides: false, ghosts: [] };
    return byKind(channelsOf(ids.split('\n'), capture)).map((group) => {
      const id = group[0]?.id ?? 'none';
      const layout = {
        id,
        channelIds: group.map((channel) => channel.id),
        share: 1,
        scale: { kind: 'quantity' },
      } as const;
      const { wish } = paneModel(layout, setting);
      return { id, wish: { ...wish, traces: wish.traces.map((trace) => ({ ...trace, width: 1, dash: [] })) } };
    });
  }, [ids, capture, source, theme]);
  return (
    <div className="overviewCanvas">
      {models.map(({ id, wish }) => (
        <PaneCanvas key={id} stage={stage} wish={wish} style={CANVAS_STYLE} />
      ))}
    </div>
  );
}

function byKind(channels: readonly ChannelSummary[]): ChannelSummary[][] {
  const groups = new Map<string, ChannelSummary[]>();
  for (const channel of channels) {
    const kind = channel.role === 'other' ? channel.id : paneKindOf(channel.role).id;
    groups.set(kind, [...(groups.get(kind) ?? []), channel]);
  }
  return [...groups.values()];
}

// What a pane of a comparison draws: the same quantity of both sides on one scale, the second side broken and heavier, so
// that the two differ without their hue.

import type { ChannelSummary } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { type Theme, TRACE_COLOURS, traceDash, traceWidth } from '../style/traceColours.ts';
import type { ComparedPane, ComparedSide, CompareStackProps } from './compareStackProps.ts';
import type { PaneTrace } from './paneDrawing.ts';
import { channelsOf, feedOf, type LegendEntry, type PaneModel, quantityRange } from './paneModel.ts';
import { fullTraceWords, kindOf, paneTitle, paneUnit, shownGuide, traceWords } from './paneWords.ts';
import { shownUnit } from './shownUnit.ts';
import type { Feed } from './viewLoader.ts';
import type { ZoomLimits } from './zoom.ts';

export type CompareSetting = Pick<CompareStackProps, 'first' | 'second' | 'guides' | 'theme' | 'units'>;

/** The second side is drawn this much heavier, CSS px. */
const SECOND_HEAVIER_PX = 0.5;

/** A pane of both sides. The shifts are filled in when the offset is known: it changes while it is dragged. */
export function compareModel(pane: ComparedPane, setting: CompareSetting): PaneModel {
  const { first, second, theme, units } = setting;
  const ones = channelsOf(pane.firstChannelIds, first.capture);
  const others = channelsOf(pane.secondChannelIds, second.capture);
  const both = [...ones, ...others];
  const shown = shownUnit(both[0]?.unit ?? '1', units);
  const legend = [
    ...ones.map((channel) => legendEntry(channel, ones, first, 0, theme)),
    ...others.map((channel) => legendEntry(channel, others, second, 1, theme)),
  ];
  return {
    title: ones.length > 0 ? paneTitle(ones, first.capture) : paneTitle(others, second.capture),
    unit: paneUnit(both.map((channel) => shownUnit(channel.unit, units).unit)),
    shown,
    channels: both,
    legend,
    wish: {
      theme,
      feeds: [sideFeed(ones, first), sideFeed(others, second)],
      shifts: [0, 0],
      traces: legend.map(({ channelId, colour, width, dash, feed }) => ({ channelId, colour, width, dash, feed })),
      ghosts: [],
      scale: pane.scale,
      quantityRange: quantityRange(both),
      shown,
      guides: setting.guides ? kindOf(both).guides.map((guide) => shownGuide(guide, shown)) : [],
    },
  };
}

/** What is added to the times of each capture to get those of the common axis. */
export function compareShifts(first: ComparedSide, second: ComparedSide, offsetS: number): readonly [number, number] {
  return [-first.window.startS, offsetS - second.window.startS];
}

/** Both windows on the common axis. */
export function comparedStretches(
  first: ComparedSide,
  second: ComparedSide,
  offsetS: number,
): readonly [Stretch, Stretch] {
  const length = ({ window }: ComparedSide): number => window.endS - window.startS;
  return [
    { startS: 0, endS: length(first) },
    { startS: offsetS, endS: offsetS + length(second) },
  ];
}

/** As far as anything of the two windows can be seen. */
export function compareLimits(setting: CompareSetting, panes: readonly ComparedPane[], offsetS: number): ZoomLimits {
  const [one, other] = comparedStretches(setting.first, setting.second, offsetS);
  const rates = panes.flatMap((pane) => [
    ...channelsOf(pane.firstChannelIds, setting.first.capture),
    ...channelsOf(pane.secondChannelIds, setting.second.capture),
  ]);
  const fastestHz = Math.max(0, ...rates.map(({ facts }) => facts.medianRateHz));
  const startS = Math.min(one.startS, other.startS);
  const endS = Math.max(one.endS, other.endS, startS + 1e-3);
  return { startS, endS, leastSpanS: Math.min(fastestHz > 0 ? 5 / fastestHz : 0.01, endS - startS) };
}

/** A side gives nothing beyond its window: what is compared is what was marked. */
function sideFeed(channels: readonly ChannelSummary[], side: ComparedSide): Feed {
  return { ...feedOf(channels, side), whole: side.window };
}

function legendEntry(
  channel: ChannelSummary,
  among: readonly ChannelSummary[],
  side: ComparedSide,
  feed: 0 | 1,
  theme: Theme,
): LegendEntry & PaneTrace {
  const words = traceWords(channel, among, side.capture);
  return {
    feed,
    readingKey: `${feed === 0 ? 'first' : 'second'} ${channel.id}`,
    channelId: channel.id,
    channel,
    words: among.length > 1 && words !== '' ? `${side.label}: ${words.toLowerCase()}` : side.label,
    fullWords: `${side.label}: ${fullTraceWords(channel, side.capture)}`,
    colour: TRACE_COLOURS[channel.role][theme],
    width: traceWidth(channel.role) + (feed === 1 ? SECOND_HEAVIER_PX : 0),
    dash: traceDash({ bank: among.length > 1 ? channel.bank : null, sensor: channel.sensor, second: feed === 1 }),
  };
}

// Everything a pane needs to be drawn and named, made from its layout: plain data, so that it can be looked at in a test.

import type { CaptureOutline, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { PANE_COLOURS, type Theme, TRACE_COLOURS, traceDash, traceWidth } from '../style/traceColours.ts';
import type { PaneTrace, PaneWish } from './paneDrawing.ts';
import { fullTraceWords, kindOf, paneTitle, paneUnit, shownGuide, traceWords } from './paneWords.ts';
import type { DrawnTrace } from './plotSurface.ts';
import { type ShownUnit, shownUnit } from './shownUnit.ts';
import type { DisplayUnits, GhostTrace, PaneLayout, TraceSource } from './traceStackProps.ts';
import type { Feed } from './viewLoader.ts';

export interface PaneModel {
  readonly title: string;
  readonly unit: string;
  readonly shown: ShownUnit;
  readonly wish: PaneWish;
  readonly channels: readonly ChannelSummary[];
  readonly legend: readonly LegendEntry[];
}

/** A trace in the head of its pane. */
export interface LegendEntry extends Omit<PaneTrace, 'feed'> {
  /** Under which its value at the cursor is read; different for every entry of a pane. */
  readonly readingKey: string;
  readonly words: string;
  readonly fullWords: string;
  /** Null for a trace that is given and has no value under the cursor. */
  readonly channel: ChannelSummary | null;
}

export interface PaneSetting {
  readonly capture: CaptureOutline;
  readonly source: TraceSource;
  readonly theme: Theme;
  readonly units: DisplayUnits | undefined;
  readonly guides: boolean;
  readonly ghosts: readonly GhostTrace[];
}

const GHOST_DASHES: readonly (readonly number[])[] = [
  [7, 3],
  [2, 3],
  [10, 3, 2, 3],
];

export function paneModel(pane: PaneLayout, setting: PaneSetting): PaneModel {
  const { capture, theme, units } = setting;
  const channels = channelsOf(pane.channelIds, capture);
  const kind = kindOf(channels);
  const shown = shownUnit(channels[0]?.unit ?? '1', units);
  const legend = channels.map((channel, i) => legendEntry(channel, i, channels, capture, theme));
  const ghosts = setting.ghosts.filter((ghost) => pane.channelIds.includes(ghost.overChannelId));
  return {
    title: paneTitle(channels, capture),
    unit: paneUnit(channels.map((channel) => shownUnit(channel.unit, units).unit)),
    shown,
    channels,
    legend: [...legend, ...ghosts.map((ghost, i) => ghostEntry(ghost, i, theme))],
    wish: {
      theme,
      feeds: [feedOf(channels, setting)],
      shifts: [0],
      traces: legend.map((entry) => ({ ...entry, feed: 0 })),
      ghosts: ghosts.map((ghost, i) => ghostTrace(ghost, i, theme)),
      scale: pane.scale,
      quantityRange: quantityRange(channels),
      shown,
      guides: setting.guides ? kind.guides.map((guide) => shownGuide(guide, shown)) : [],
    },
  };
}

export function channelsOf(ids: readonly string[], capture: CaptureOutline): ChannelSummary[] {
  return ids.flatMap((id) => capture.channels.find((channel) => channel.id === id) ?? []);
}

/** The scale that is fixed for the quantity, over the whole capture. */
export function quantityRange(channels: readonly ChannelSummary[]): readonly [number, number] {
  const filled = channels.filter(({ facts }) => facts.finite > 0);
  const low = Math.min(...filled.map(({ facts }) => facts.min));
  const high = Math.max(...filled.map(({ facts }) => facts.max));
  return Number.isFinite(low) && Number.isFinite(high) ? kindOf(channels).quantityRange(low, high) : [0, 1];
}

export function feedOf(channels: readonly ChannelSummary[], from: Pick<PaneSetting, 'capture' | 'source'>): Feed {
  const intervals = channels.flatMap(({ facts }) => (facts.medianRateHz > 0 ? [1 / facts.medianRateHz] : []));
  return {
    source: from.source,
    channelIds: channels.map(({ id }) => id),
    whole: { startS: 0, endS: Math.max(from.capture.durationS, 1e-3) },
    intervalS: Math.max(0, ...intervals),
  };
}

function legendEntry(
  channel: ChannelSummary,
  index: number,
  among: readonly ChannelSummary[],
  capture: CaptureOutline,
  theme: Theme,
): LegendEntry {
  return {
    readingKey: channel.id,
    channelId: channel.id,
    channel,
    words: traceWords(channel, among, capture),
    fullWords: fullTraceWords(channel, capture),
    colour: TRACE_COLOURS[channel.role][theme],
    width: traceWidth(channel.role),
    dash: channel.role === 'other' ? (GHOST_DASHES[index - 1] ?? []) : traceDash(channel),
  };
}

function ghostEntry(ghost: GhostTrace, index: number, theme: Theme): LegendEntry {
  const { colour, width, dash } = ghostTrace(ghost, index, theme);
  return {
    readingKey: ghost.id,
    channelId: ghost.id,
    channel: null,
    words: ghost.words,
    fullWords: ghost.words,
    colour,
    width,
    dash,
  };
}

function ghostTrace(ghost: GhostTrace, index: number, theme: Theme): DrawnTrace {
  return {
    view: ghost.view,
    shiftS: 0,
    colour: PANE_COLOURS.ghost[theme],
    width: 1.5,
    dash: GHOST_DASHES[index % GHOST_DASHES.length] ?? [],
  };
}

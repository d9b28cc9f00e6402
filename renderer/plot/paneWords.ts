// What panes and traces are called.

import type { CaptureOutline, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { ROLE_FACTS } from '../../core/capture/roles.ts';
import { paneKindOf } from '../panes/index.ts';
import type { Guide, PaneKind } from '../panes/paneKind.ts';
import { numberWords, withUnit } from '../words/numbers.ts';
import type { ShownGuide } from './guideDrawing.ts';
import type { ShownUnit } from './shownUnit.ts';
import { stepDigits } from './valueTicks.ts';

/** Digits an instrument's values deserve where no role says so. */
const MOST_DIGITS = 4;

export function kindOf(channels: readonly ChannelSummary[]): PaneKind {
  return paneKindOf(channels[0]?.role ?? 'other');
}

/** Name of a pane: of its quantity, or of its one role, with the bank where the capture has two and the pane shows one of them. */
export function paneTitle(channels: readonly ChannelSummary[], capture: CaptureOutline): string {
  const roles = new Set(channels.map(({ role }) => role));
  const names = [
    ...new Set(
      channels.map(({ role, name }) => {
        if (role === 'other') return name;
        return roles.size === 1 ? ROLE_FACTS[role].words : paneKindOf(role).words;
      }),
    ),
  ];
  const bank = channels[0]?.bank ?? null;
  const oneBank = bank !== null && channels.every((channel) => channel.bank === bank);
  const first = names.length > 0 ? names.join(', ') : kindOf(channels).words;
  return oneBank && hasTwoBanks(capture) ? `${first}, bank ${bank}` : first;
}

/** Unit of a pane's axis; units that differ stand side by side. */
export function paneUnit(units: readonly string[]): string {
  return [...new Set(units)].join(' and ');
}

/** What a trace is called inside its pane; empty where the pane's name says it already. */
export function traceWords(channel: ChannelSummary, among: readonly ChannelSummary[], capture: CaptureOutline): string {
  const kind = paneKindOf(channel.role);
  const parts: string[] = [];
  const word = channel.role === 'other' ? channel.name : kind.channelWords[channel.role];
  const namesPane = among.every(
    (other) => other.role === channel.role && (other.role !== 'other' || among.length === 1),
  );
  if (word !== undefined && !namesPane) parts.push(word);
  const banksDiffer = among.some((other) => other.bank !== channel.bank);
  if (banksDiffer && channel.bank !== null && hasTwoBanks(capture)) parts.push(`bank ${channel.bank}`);
  const twins = among.filter((other) => other.role === channel.role && other.bank === channel.bank);
  if (twins.length > 1 && channel.role !== 'other') {
    parts.push(channel.sensor === null ? channel.name : `sensor ${channel.sensor}`);
  }
  return parts.join(', ');
}

/** The full name of a trace, for those who do not see its pane: "Upstream oxygen sensor, bank 1". */
export function fullTraceWords(channel: ChannelSummary, capture: CaptureOutline): string {
  const name = channel.role === 'other' ? channel.name : ROLE_FACTS[channel.role].words;
  return channel.bank !== null && hasTwoBanks(capture) ? `${name}, bank ${channel.bank}` : name;
}

/** Digits after the decimal sign of a channel's values. */
export function valueDigits(channel: ChannelSummary): number {
  if (channel.role !== 'other') return ROLE_FACTS[channel.role].digits;
  const { resolution } = channel.facts;
  return resolution > 0 ? Math.min(MOST_DIGITS, stepDigits(resolution)) : ROLE_FACTS.other.digits;
}

/** "0.45 V switch point", "2000 to 2500 1/min hold band". */
export function shownGuide(guide: Guide, shown: ShownUnit): ShownGuide {
  const [low, high] = guide.kind === 'line' ? [guide.at, guide.at] : [guide.low, guide.high];
  const words = (value: number): string => {
    const there = shown.toShown(value);
    return numberWords(there, Number.isInteger(there) ? 0 : Math.abs(there) < 10 ? 2 : 0);
  };
  const top = shown.toShown(high);
  const last = withUnit(top, shown.unit, Number.isInteger(top) ? 0 : Math.abs(top) < 10 ? 2 : 0);
  return { low, high, words: low === high ? `${last} ${guide.words}` : `${words(low)} to ${last} ${guide.words}` };
}

function hasTwoBanks(capture: CaptureOutline): boolean {
  return capture.channels.some(({ bank }) => bank === 2);
}
